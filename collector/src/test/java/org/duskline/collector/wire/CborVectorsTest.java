package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.duskline.collector.testing.Published;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The encodings of RFC 8949 appendix A, each put into a pack as a value or as a field of somebody's extension. */
class CborVectorsTest {
    private static final JsonNode APPENDIX = Published.read("cbor-appendix-a.json");
    private static final String RECORD_WITH_WEIGHT = "00667765696768740200";
    private static final Set<String> NUMBERS_IN_WORDS = Set.of("NaN", "Infinity", "-Infinity");

    static Stream<JsonNode> numbers() {
        return StreamSupport.stream(APPENDIX.path("vectors").spliterator(), false)
                .filter(vector -> vector.path("decoded").isNumber()
                        || NUMBERS_IN_WORDS.contains(vector.path("diagnostic").asText()));
    }

    /** All but simple(24) in two bytes: RFC 7049 still allowed it, RFC 8949 section 3.3 calls it ill-formed. */
    static Stream<JsonNode> vectors() {
        return StreamSupport.stream(APPENDIX.path("vectors").spliterator(), false)
                .filter(vector -> !vector.path("hex").asText().equals("f818"));
    }

    static Stream<String> cutOff() {
        return texts(APPENDIX.path("truncated").path("hex"));
    }

    static Stream<String> illFormed() {
        return texts(APPENDIX.path("ill_formed").path("hex"));
    }

    private static Stream<String> texts(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).map(JsonNode::asText);
    }

    private static List<SenmlRecord> decode(String hex) throws UnreadableMessage {
        return SenmlPack.decode(HexFormat.of().parseHex(hex));
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void a_number_of_any_encoding_is_read_as_a_value(JsonNode vector) throws Exception {
        double expected = vector.has("decoded")
                ? vector.path("decoded").doubleValue()
                : Double.parseDouble(vector.path("diagnostic").asText());
        // The base value of zero is added to each, which makes a plain zero of the negative one.
        List<SenmlRecord> records =
                decode("81a2" + "006677656967687402" + vector.path("hex").asText());
        assertThat(records).singleElement().satisfies(record -> {
            assertThat(record.name()).isEqualTo("weight");
            assertThat(record.value()).isEqualTo(Double.valueOf(0.0 + expected));
        });
    }

    @ParameterizedTest
    @MethodSource("vectors")
    void anything_well_formed_in_an_unknown_field_is_passed_over(JsonNode vector) throws Exception {
        String hex = "81a3" + "6178" + vector.path("hex").asText() + RECORD_WITH_WEIGHT;
        assertThat(decode(hex)).extracting(SenmlRecord::name).containsExactly("weight");
    }

    @ParameterizedTest
    @MethodSource("cutOff")
    void a_pack_that_ends_in_the_middle_of_an_item_is_damage(String hex) {
        assertThatThrownBy(() -> decode("81a2" + "006677656967687402" + hex)).isInstanceOf(UnreadableMessage.class);
        assertThatThrownBy(() -> decode("9f" + hex)).isInstanceOf(UnreadableMessage.class);
    }

    @ParameterizedTest
    @MethodSource("illFormed")
    void what_no_decoder_may_accept_is_damage(String hex) {
        assertThatThrownBy(() -> decode("81a2" + "006677656967687402" + hex)).isInstanceOf(UnreadableMessage.class);
    }
}
