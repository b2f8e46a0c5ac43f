import java.io.ByteArrayInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

/** Posts a body with the platform's own client as it comes: with a length, in chunks, and ten at once. */
public final class AskByDefault {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    public static void main(String[] arguments) {
        URI address = URI.create(arguments[0]);
        byte[] body = arguments[1].getBytes(StandardCharsets.UTF_8);
        ask(address, BodyPublishers.ofByteArray(body)).join();
        ask(address, BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body))).join();
        Stream.generate(() -> ask(address, BodyPublishers.ofByteArray(body)))
            .limit(10)
            .toList()
            .forEach(CompletableFuture::join);
    }

    private static CompletableFuture<Void> ask(URI address, BodyPublisher body) {
        HttpRequest request = HttpRequest.newBuilder(address)
            .header("Content-Type", "application/json")
            .POST(body)
            .build();
        return CLIENT.sendAsync(request, BodyHandlers.ofString())
            .thenAccept(answer -> System.out.println(answer.version() + " " + answer.statusCode() + " " + answer.body()));
    }
}
