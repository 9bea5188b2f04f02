package org.arcsay.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.Side;
import org.junit.jupiter.api.Test;

class ProtocolModelTest {
    private final HomeModel home = new HomeModel(new HomeScript());

    @Test
    void whatIsChosenIsKeptAndShownAgain() {
        ProtocolModel model = home.protocol("T-7").orElseThrow();
        assertThat(model.protocol().isNone()).isTrue();
        assertThat(model.save(
                        Optional.of(Side.LEFT),
                        false,
                        true,
                        "IP flexion at most 40\nMP extension not beyond neutral",
                        "AK"))
                .isTrue();
        ProtocolModel again = home.protocol("T-7").orElseThrow();
        assertThat(again.protocol())
                .isEqualTo(PatientProtocol.parse(
                        "involved left; no passive; IP flexion at most 40; MP extension not beyond neutral"));
        assertThat(again.ranges()).isEqualTo("IP flexion at most 40 degrees\nMP extension not beyond neutral");
        assertThat(model.message()).contains("begin from now on").contains("passive motion not permitted");
    }

    @Test
    void whatIsNotUnderstoodChangesNothingAndIsNamed() {
        ProtocolModel model = home.protocol("T-7").orElseThrow();
        model.save(Optional.empty(), false, true, "", "");
        assertThat(model.save(Optional.empty(), true, true, "IP bending at most 40", ""))
                .isFalse();
        assertThat(model.message()).contains("Nothing was changed").contains("'ip bending at most 40'");
        assertThat(model.protocol().passivePermitted()).isFalse();
    }

    @Test
    void aCodeIsNeeded() {
        assertThat(home.protocol(" ")).isEmpty();
        assertThat(home.message()).contains("patient's code");
    }
}
