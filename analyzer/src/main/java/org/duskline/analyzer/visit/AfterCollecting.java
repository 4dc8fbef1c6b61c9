package org.duskline.analyzer.visit;

/**
 * What to see to once a swarm is home. Common practice, with sources where there are any; local rules and licensed
 * practice come first.
 */
public enum AfterCollecting {
    ISOLATE(
            "Stand it apart from your hives, 2 km and more if you can, until its brood has been inspected: robbing carries"
                    + " foulbrood within about 1 km, far less at 2 (Lindström 2008)."),
    INSPECT(
            "Inspect the first brood, 6 to 8 weeks on at the latest, or have it inspected: spores travel with swarms and"
                    + " show late (Fries 2006)."),
    TREAT("Against varroa the days before capped brood, up to about the ninth, are the best: labelled products only, as"
            + " your authority allows them."),
    REGISTER("Ask your authority or club: does a new colony have to be registered, reported or moved with papers?"),
    REPORT("Suspect a notifiable disease? Leave it where it is, close the entrance against robbers, and report it."),
    OWNER(
            "Does the law where you are give the swarm's former keeper or the landowner a claim? Ask before you keep it."),
    DEFENSIVE("Where Africanised bees occur, have only trained and registered people handle it."),
    EQUIPMENT("Scorch or clean the box, and take comb from colonies known to be healthy only, before it hangs again.");

    private final String said;

    AfterCollecting(String said) {
        this.said = said;
    }

    public String said() {
        return said;
    }
}
