package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.duskline.collector.testing.Published;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All examples of RFC 8428 against what they resolve to. */
class SenmlExamplesTest {
    private static final JsonNode RFC = Published.read("senml-rfc8428.json");

    static Stream<JsonNode> examples() {
        return StreamSupport.stream(RFC.path("examples").spliterator(), false);
    }

    static Stream<JsonNode> cborExamples() {
        return StreamSupport.stream(RFC.path("cbor").spliterator(), false);
    }

    @ParameterizedTest
    @MethodSource("examples")
    void a_json_example_of_the_standard_resolves_as_printed(JsonNode example) throws Exception {
        List<SenmlRecord> records =
                SenmlPack.decode(example.path("payload").toString().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        checkResolved(records, example.path("resolved"));
    }

    @ParameterizedTest
    @MethodSource("cborExamples")
    void a_cbor_example_of_the_standard_resolves_like_its_json_form(JsonNode example) throws Exception {
        byte[] payload = HexFormat.of().parseHex(example.path("hex").asText());
        assertThat(payload).hasSize(example.path("bytes").asInt());
        JsonNode same = examples()
                .filter(json -> json.path("id").equals(example.path("same_resolution_as")))
                .findFirst()
                .orElseThrow();
        checkResolved(SenmlPack.decode(payload), same.path("resolved"));
    }

    private static void checkResolved(List<SenmlRecord> records, JsonNode resolved) {
        assertThat(records).hasSize(resolved.size());
        for (int i = 0; i < records.size(); i++) {
            SenmlRecord record = records.get(i);
            JsonNode expected = resolved.get(i);
            assertThat(record.name()).isEqualTo(expected.path("n").asText());
            assertThat(record.unit()).isEqualTo(expected.path("u").asText(""));
            JsonNode time = expected.has("t") ? expected.path("t") : expected.path("t_relative");
            assertThat(record.seconds()).isCloseTo(time.doubleValue(), within(1e-6));
            assertThat(record.seconds() >= SenmlRecord.FIRST_ABSOLUTE_SECOND).isEqualTo(expected.has("t"));
            checkValue(record, expected);
        }
    }

    private static void checkValue(SenmlRecord record, JsonNode expected) {
        switch (record.kind()) {
            case NUMBER ->
                assertThat(record.value()).isEqualTo(expected.path("v").doubleValue());
            case TEXT -> assertThat(record.text()).isEqualTo(expected.path("vs").asText());
            case FLAG -> assertThat(record.text()).isEqualTo(expected.path("vb").asText());
            case DATA -> assertThat(record.text()).isEqualTo(expected.path("vd").asText());
            case NONE -> throw new AssertionError("no example has a sum alone");
        }
    }
}
