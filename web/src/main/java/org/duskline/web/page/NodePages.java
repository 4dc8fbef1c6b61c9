package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.web.page.board.NodeDetail;
import org.duskline.web.page.board.Nodes;

/** The page of a node and what can be asked of it there. */
public final class NodePages implements Part {
    private final Nodes nodes;

    /** @param nodes the sensor boards, and the way to tell them something */
    public NodePages(Nodes nodes) {
        this.nodes = nodes;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/node/{node}", this::show);
        routes.post("/node/{node}/settings", this::change);
        routes.post("/node/{node}/tare", this::tare);
        routes.post("/node/{node}/time", this::time);
        routes.get("/api/nodes/{node}", context -> context.json(NodeShapes.node(find(context))));
    }

    private void show(Context context) {
        render(context, NodeView.of(find(context)));
    }

    private void change(Context context) {
        NodeDetail detail = find(context);
        NodeView.Form typed =
                new NodeView.Form(field(context, "period"), field(context, "quick-period"), field(context, "quick"));
        try {
            NodeSettings asked = new NodeSettings(
                    seconds("between samples", typed.period()),
                    seconds("between quick samples", typed.quickPeriod()),
                    QuickMode.named(typed.quick())
                            .orElseThrow(() -> new IllegalArgumentException("Quick mode is auto, on or off.")),
                    detail.startingFrom().tare());
            nodes.ask(detail.name(), asked, Visitor.of(context).name());
            back(context, detail);
        } catch (IllegalArgumentException wrong) {
            context.status(HttpStatus.UNPROCESSABLE_CONTENT);
            render(context, new NodeView(detail, Optional.of(wrong.getMessage()), typed));
        }
    }

    private void tare(Context context) {
        NodeDetail detail = find(context);
        if (!detail.canTare() || !field(context, "quiet").equals("yes")) {
            context.status(HttpStatus.UNPROCESSABLE_CONTENT);
            String trouble = detail.canTare()
                    ? "Say first that the box hangs empty and still."
                    : "This node has not acknowledged a tare number yet, so it would not tare. Wait for its first"
                            + " acknowledgement.";
            render(context, new NodeView(detail, Optional.of(trouble), NodeView.Form.of(detail.startingFrom())));
            return;
        }
        nodes.ask(
                detail.name(),
                detail.startingFrom().taredOnceMore(),
                Visitor.of(context).name());
        back(context, detail);
    }

    private void time(Context context) {
        NodeDetail detail = find(context);
        nodes.tellTime(detail.name(), Visitor.of(context).name());
        back(context, detail);
    }

    private NodeDetail find(Context context) {
        String name = context.pathParam("node");
        return nodes.node(name)
                .orElseThrow(() -> new NotHere("No node named \"" + name + "\" was ever heard or fitted."));
    }

    private static String field(Context context, String name) {
        return Optional.ofNullable(context.formParam(name)).map(String::strip).orElse("");
    }

    private static long seconds(String what, String typed) {
        try {
            return Long.parseLong(typed);
        } catch (NumberFormatException noNumber) {
            throw new IllegalArgumentException(
                    "The time " + what + " takes a whole number of seconds, not \"" + typed + "\".");
        }
    }

    private static void back(Context context, NodeDetail detail) {
        context.redirect(Links.node(detail.name()) + "#settings", HttpStatus.SEE_OTHER);
    }

    private static void render(Context context, NodeView view) {
        Shell shell = new Shell(
                "Node " + view.detail().name(),
                "line",
                view.detail().now(),
                Optional.of(view.detail().link()));
        Routes.render(context, "node", shell, view);
    }
}
