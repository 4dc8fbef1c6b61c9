package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.duskline.analyzer.evening.Caution;
import org.duskline.web.page.board.Doorstep;
import org.duskline.web.page.board.Watchboard;

/** The page for a phone in hand, at a trap, in the dusk: may I close? */
public final class ClosingPage implements Part {
    private final Watchboard board;

    public ClosingPage(Watchboard board) {
        this.board = board;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/traps/{trap}/closing", this::show);
        routes.get(
                "/api/traps/{trap}/closing",
                context -> context.header("Cache-Control", "no-cache").json(ApiShapes.doorstep(find(context))));
    }

    private void show(Context context) {
        Doorstep doorstep = find(context);
        Shell shell =
                new Shell("Close " + doorstep.trap().name(), "tonight", doorstep.now(), Optional.of(doorstep.link()));
        Routes.render(
                context, "closing", shell, new View(doorstep, UUID.randomUUID().toString()));
    }

    private Doorstep find(Context context) {
        String name = TrapAddress.nameIn(context.pathParam("trap"));
        return board.doorstep(name).orElseThrow(() -> new NotHere("The line has no trap named \"" + name + "\"."));
    }

    /**
     * What the page shows.
     *
     * @param doorstep how it is there
     * @param mark a fresh mark for writing the closing down
     */
    public record View(Doorstep doorstep, String mark) {
        public String address() {
            return Links.address(doorstep.trap().name());
        }

        /** What may hurt somebody here and now; the whole list stands on tonight's sheet. */
        public List<Caution> cautions() {
            return List.of(
                    Caution.STINGS, Caution.LADDER, Caution.WEIGHT, Caution.HEAT, Caution.NIGHT, Caution.LOCAL_RULES);
        }
    }
}
