package org.duskline.collector.intake;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.function.Consumer;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.duskline.collector.wire.Message;

/**
 * Reads one recorded stream, plain or gzip-compressed (told by its first bytes), message by message in the order of the
 * file. A line that is no message is handed to a listener and passed over; a file that is cut off gives all whole lines
 * before the cut.
 */
public final class RecordedStream implements Iterator<Message>, AutoCloseable {
    private static final int BUFFER = 1 << 16;
    private static final int LONGEST_LINE = 64 << 20;

    private final Path file;
    private final Consumer<SpoiltLine> spoilt;
    private final CountingInput counter;
    private final InputStream input;
    private final RecordedLine parser = new RecordedLine();
    private byte[] line = new byte[BUFFER];
    private int length;
    private final byte[] block = new byte[BUFFER];
    private int blockAt;
    private int blockEnd;
    private long number;
    private boolean ended;
    private Message next;

    private RecordedStream(Path file, Consumer<SpoiltLine> spoilt, CountingInput counter, InputStream input) {
        this.file = file;
        this.spoilt = spoilt;
        this.counter = counter;
        this.input = input;
    }

    /**
     * Opens a file.
     *
     * @param spoilt is told of each line that is no message
     */
    public static RecordedStream open(Path file, Consumer<SpoiltLine> spoilt) {
        try {
            CountingInput counter = new CountingInput(Files.newInputStream(file));
            return new RecordedStream(file, spoilt, counter, unpacked(counter));
        } catch (IOException failed) {
            throw new StreamProblem(
                    "The recorded stream " + file + " cannot be opened: " + failed.getMessage()
                            + ". Check the name and whether it may be read.",
                    failed);
        }
    }

    private static InputStream unpacked(CountingInput counter) throws IOException {
        BufferedInputStream buffered = new BufferedInputStream(counter, BUFFER);
        buffered.mark(2);
        boolean gzip = buffered.read() == 0x1f && buffered.read() == 0x8b;
        buffered.reset();
        return gzip ? new GZIPInputStream(buffered, BUFFER) : buffered;
    }

    /** How many bytes of the file itself have been read, compressed if it is; for showing progress. */
    public long bytesRead() {
        return counter.count;
    }

    /** How many lines have been read. */
    public long linesRead() {
        return number;
    }

    @Override
    public boolean hasNext() {
        while (next == null && readLine()) {
            try {
                next = parser.parse(line, length);
            } catch (IOException broken) {
                spoilt.accept(new SpoiltLine(file.toString(), number, firstLine(broken)));
            }
        }
        return next != null;
    }

    @Override
    public Message next() {
        if (!hasNext()) {
            throw new NoSuchElementException("The recorded stream " + file + " has ended.");
        }
        Message message = next;
        next = null;
        return message;
    }

    /** Reads the next line that isn't blank. */
    private boolean readLine() {
        while (!ended) {
            try {
                fillLine();
            } catch (EOFException | ZipException cutOff) {
                ended = true;
                spoilt.accept(new SpoiltLine(
                        file.toString(),
                        number + 1,
                        "The compressed file is cut off or damaged here; what stands before it was read."));
                return false;
            } catch (IOException failed) {
                throw new StreamProblem(
                        "Reading " + file + " failed behind line " + number + ": " + failed.getMessage()
                                + ". What was read so far is kept; start again, nothing is taken twice.",
                        failed);
            }
            if (!ended || length > 0) {
                number++;
            }
            if (!isBlank()) {
                return true;
            }
        }
        return false;
    }

    private void fillLine() throws IOException {
        length = 0;
        while (true) {
            if (blockAt == blockEnd && !refill()) {
                ended = true;
                return;
            }
            int stop = blockAt;
            while (stop < blockEnd && block[stop] != '\n') {
                stop++;
            }
            append(block, blockAt, stop - blockAt);
            blockAt = stop;
            if (stop < blockEnd) {
                blockAt++;
                return;
            }
        }
    }

    private boolean refill() throws IOException {
        blockAt = 0;
        blockEnd = Math.max(0, input.read(block));
        return blockEnd > 0;
    }

    private void append(byte[] from, int offset, int count) throws IOException {
        if (length + count > LONGEST_LINE) {
            throw new IOException("a line is longer than " + (LONGEST_LINE >> 20) + " MiB");
        }
        if (length + count > line.length) {
            line = Arrays.copyOf(line, Math.max(2 * line.length, length + count));
        }
        System.arraycopy(from, offset, line, length, count);
        length += count;
    }

    private boolean isBlank() {
        for (int i = 0; i < length; i++) {
            if (line[i] != ' ' && line[i] != '\t' && line[i] != '\r') {
                return false;
            }
        }
        return true;
    }

    private static String firstLine(IOException broken) {
        String text = String.valueOf(broken.getMessage());
        int end = text.indexOf('\n');
        return end < 0 ? text : text.substring(0, end);
    }

    @Override
    public void close() {
        try {
            input.close();
        } catch (IOException failed) {
            throw new StreamProblem("Closing " + file + " failed: " + failed.getMessage() + ".", failed);
        }
    }

    private static final class CountingInput extends FilterInputStream {
        private long count;

        CountingInput(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int octet = super.read();
            count += octet < 0 ? 0 : 1;
            return octet;
        }

        @Override
        public int read(byte[] into, int offset, int wanted) throws IOException {
            int got = super.read(into, offset, wanted);
            count += Math.max(0, got);
            return got;
        }
    }
}
