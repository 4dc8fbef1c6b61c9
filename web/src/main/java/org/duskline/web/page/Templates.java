package org.duskline.web.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import io.javalin.rendering.FileRenderer;
import java.util.HashMap;
import java.util.Map;

/** Renders the templates that were compiled with the program. */
final class Templates implements FileRenderer {
    private final TemplateEngine engine =
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "org.duskline.web.page.templates");

    /** A piece of a page that is sent by itself; it holds no form, so that it does not matter who asks. */
    String piece(String template, Map<String, Object> model) {
        StringOutput piece = new StringOutput();
        engine.render(template, model, piece);
        return piece.toString();
    }

    @Override
    public String render(String template, Map<String, ?> model, Context context) {
        StringOutput page = new StringOutput();
        Map<String, Object> values = new HashMap<>(model);
        values.computeIfPresent("shell", (name, shell) -> ((Shell) shell).seenBy(Visitor.of(context)));
        engine.render(template, values, page);
        return page.toString();
    }
}
