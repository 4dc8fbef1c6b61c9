package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.duskline.collector.testing.Published;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever arrives is either placed at or before its receipt or refused with a reason; nothing else is thrown. */
class DecodingFuzzTest {
    private static final long RECEIVED = 1_777_888_800_250L;

    @FuzzTest
    void any_bytes_are_placed_or_refused(FuzzedDataProvider data) {
        check(data.consumeRemainingAsBytes());
    }

    private static void check(byte[] payload) {
        try {
            ReadingPack pack = ReadingPack.decode(payload);
            assertThat(pack.digest())
                    .isEqualTo(ReadingPack.decode(payload.clone()).digest());
            TimedPack timed = ClockRepair.place(pack, RECEIVED, List.of());
            assertThat(timed.samples()).isNotEmpty().allMatch(sample -> sample.timeMillis() <= RECEIVED);
            assertThat(timed.samples()).extracting(Sample::timeMillis).isSorted();
        } catch (UnreadableMessage refused) {
            assertThat(refused.reason()).isNotNull();
            assertThat(refused.getMessage()).isNotBlank();
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_good_pack_with_flipped_cut_or_shuffled_bytes_is_placed_or_refused(long seed) {
        Random random = new Random(seed);
        List<byte[]> good = goodPacks();
        for (int i = 0; i < 500; i++) {
            check(spoilt(good.get(random.nextInt(good.size())), random));
        }
    }

    private static byte[] spoilt(byte[] good, Random random) {
        byte[] payload = Arrays.copyOf(good, random.nextInt(4) == 0 ? random.nextInt(good.length + 1) : good.length);
        for (int flips = random.nextInt(4); flips > 0 && payload.length > 0; flips--) {
            int at = random.nextInt(payload.length);
            payload[at] = (byte) (random.nextBoolean() ? payload[at] ^ (1 << random.nextInt(8)) : random.nextInt(256));
        }
        return payload;
    }

    private static List<byte[]> goodPacks() {
        List<byte[]> packs = new ArrayList<>();
        Published.read("senml-rfc8428.json")
                .path("cbor")
                .forEach(example ->
                        packs.add(HexFormat.of().parseHex(example.path("hex").asText())));
        packs.add(
                ("[{\"bn\":\"n07/\",\"bt\":1777888800,\"n\":\"in\",\"u\":\"count\",\"v\":1204},{\"n\":\"out\",\"v\":1190},"
                                + "{\"n\":\"weight\",\"u\":\"kg\",\"v\":6.125},{\"n\":\"boot\",\"v\":3},{\"n\":\"seq\",\"v\":77}]")
                        .getBytes(StandardCharsets.UTF_8));
        // The same in CBOR: half and single floats, a decimal fraction, indefinite array and map.
        packs.add(HexFormat.of()
                .parseHex("9fa521646e30372f221a69f86960" + "00" + "62696e" + "01" + "65636f756e74" + "02" + "1904b4"
                        + "bf00636f7574021904a6ff" + "a3006677656967687402c482221917ed0620" + "a20063626f7802f94d00"
                        + "a2006462" + "6f6f740203" + "ff"));
        return packs;
    }
}
