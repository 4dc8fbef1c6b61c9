package org.duskline.web.page;

import java.io.IOException;
import java.net.CookieManager;
import java.net.CookiePolicy;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A browser without scripts: keeps cookies, fills in forms with the token of the page that they stand on. */
public final class PlainBrowser {
    private static final Pattern TOKEN = Pattern.compile("name=\"token\" value=\"([^\"]*)\"");

    private final CookieManager cookies = new CookieManager(null, CookiePolicy.ACCEPT_ALL);
    private final HttpClient client = HttpClient.newBuilder()
            .cookieHandler(cookies)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    private final int port;
    private final String root;

    public PlainBrowser(int port) {
        this.port = port;
        this.root = "http://127.0.0.1:" + port;
    }

    /** Where it looks. */
    public int port() {
        return port;
    }

    public HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(URI.create(root + path)).build());
    }

    /** Opens a page and sends its form, with the token that the page gave. */
    public HttpResponse<String> fill(String page, String action, Map<String, String> fields)
            throws IOException, InterruptedException {
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.put("token", token(page));
        return post(action, all);
    }

    /** The token that a page's forms carry. */
    public String token(String page) throws IOException, InterruptedException {
        Matcher token = TOKEN.matcher(get(page).body());
        if (!token.find()) {
            throw new IllegalStateException(page + " has no form.");
        }
        return token.group(1);
    }

    /** Sends a form as it is. */
    public HttpResponse<String> post(String action, Map<String, String> fields)
            throws IOException, InterruptedException {
        String body = fields.entrySet().stream()
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send(HttpRequest.newBuilder(URI.create(root + action))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build());
    }

    /** Sends JSON with headers. */
    public HttpResponse<String> postJson(String action, String body, Map<String, String> headers)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(root + action))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body));
        headers.forEach(request::header);
        return send(request.build());
    }

    private HttpResponse<String> send(HttpRequest request) throws IOException, InterruptedException {
        return client.send(request, HttpResponse.BodyHandlers.ofString());
    }

    /** Whereto an answer leads. */
    public static String leadsTo(HttpResponse<String> answer) {
        return answer.headers().firstValue("Location").orElse("");
    }

    List<HttpCookie> cookies() {
        return cookies.getCookieStore().getCookies();
    }
}
