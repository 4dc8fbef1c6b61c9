package org.duskline.analyzer.season;

import java.time.Instant;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.PriorityQueue;
import org.duskline.collector.wire.Message;

/** The messages of a season in order of receipt, made while they are asked for. */
public final class SeasonStream implements Iterator<Message> {
    private record Head(Parcel parcel, Post post) {}

    private final Season season;
    private final List<Post> posts;
    private final PriorityQueue<Head> heads = new PriorityQueue<>(
            Comparator.comparingDouble((Head h) -> h.parcel().received()));

    SeasonStream(Season season, List<Post> posts) {
        this.season = season;
        this.posts = posts;
        posts.forEach(this::pull);
    }

    private void pull(Post post) {
        Parcel parcel = post.next();
        if (parcel != null) {
            heads.add(new Head(parcel, post));
        }
    }

    @Override
    public boolean hasNext() {
        return !heads.isEmpty();
    }

    @Override
    public Message next() {
        if (heads.isEmpty()) {
            throw new NoSuchElementException("The season is over.");
        }
        Head head = heads.remove();
        pull(head.post());
        Instant received = Instant.ofEpochMilli(Math.round(head.parcel().received() * 1000));
        return new Message(
                received,
                Season.ROOT + "/" + head.parcel().topic(),
                head.parcel().payload());
    }

    /**
     * What really happened.
     *
     * @throws IllegalStateException before the last message was taken: what was heard is only known then
     */
    public Truth truth() {
        if (hasNext()) {
            throw new IllegalStateException("The season is still playing; its truth is whole after the last message.");
        }
        return new Truth(
                season.seed(),
                season.level().wireName(),
                season.world().firstDay().toString(),
                season.world().days(),
                posts.stream().map(Post::truth).toList());
    }
}
