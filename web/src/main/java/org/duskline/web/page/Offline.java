package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * What lets a phone keep tonight's sheet and use it without reception: the manifest by which the pages can be installed
 * (W3C Web Application Manifest), and the worker that keeps them. The worker has to stand at the root, since it may
 * only serve what lies beside or below it.
 */
final class Offline implements Part {
    @Override
    public void register(RoutesConfig routes) {
        routes.get(
                "/manifest.webmanifest", context -> file(context, "manifest.webmanifest", "application/manifest+json"));
        routes.get("/worker.js", context -> file(context, "worker.js", "text/javascript; charset=utf-8"));
    }

    private static void file(Context context, String name, String type) {
        try (InputStream file = Offline.class.getResourceAsStream(name)) {
            context.header("Cache-Control", "no-cache").contentType(type).result(file.readAllBytes());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
