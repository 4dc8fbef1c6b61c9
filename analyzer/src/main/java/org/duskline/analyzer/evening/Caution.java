package org.duskline.analyzer.evening;

/** The usual cautions of the work. All but the first are common practice; none replaces local rules. */
public enum Caution {
    LOCAL_RULES("Local law, licensed practice and the landowner's word come before anything on this sheet."),
    STINGS("Veil, gloves, company and a charged phone. Whoever has ever reacted badly to a sting: ask a doctor before,"
            + " never go alone, and know the local emergency number."),
    LADDER("No lifting from a ladder: lower the box on a rope, with somebody holding the ladder's foot."),
    WEIGHT("Nobody stands under the box. Two people for 15 kg and more, or what the local rules on lifting say."),
    HEAT(
            "Close with mesh, never solid. In the shade, and no longer than 2 to 4 hours above 25 C. Do not shut in bees that"
                    + " hang outside from heat."),
    TRANSPORT("Two straps, upright, combs along the direction of travel; fresh comb breaks. No bees in the driver's"
            + " cab. Rules on moving bees differ: ask first."),
    NIGHT("Dark roads, and you are tired: rested driver, lamp, vest, load tied down."),
    DISEASE("Keep the swarm apart from your hives until its brood has been inspected; old comb from strangers can carry"
            + " foulbrood. Registration and disease reports follow local rules."),
    DEFENSIVE_BEES("Where Africanised bees occur, only people trained and registered for them open or move a trap.");

    private final String said;

    Caution(String said) {
        this.said = said;
    }

    public String said() {
        return said;
    }
}
