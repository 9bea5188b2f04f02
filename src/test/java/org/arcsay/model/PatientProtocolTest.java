package org.arcsay.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PatientProtocolTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "involved right | involved hand: right",
                "Involved hand: LEFT | involved hand: left",
                "no passive | passive motion not permitted",
                "No resisted motion | resisted motion not permitted",
                "passive not allowed | passive motion not permitted",
                "ip flexion at most 40 | IP flexion at most 40 degrees",
                "Thumb IP flexion up to 40\u00b0 | IP flexion at most 40 degrees",
                "passive mp flexion max 30 deg | passive MP flexion at most 30 degrees",
                "active IP extension lacks at least 20 | active IP extension lacks at least 20 degrees",
                "MP extension at most to neutral | MP extension not beyond neutral",
                "MP extension hyperextends at most 10 | MP extension hyperextends at most 10 degrees",
                "radial abduction at most 45 | CMC radial abduction at most 45 degrees",
                "index PIP flexion at most 60 | index PIP flexion at most 60 degrees",
                "wrist extension at most 30 | wrist extension at most 30 degrees",
                "ulnar deviation at most 12.5 | wrist ulnar deviation at most 12.5 degrees",
            })
    void readsAStatementInSeveralWordings(String typed, String statement) {
        assertThat(PatientProtocol.parse(typed).statements()).containsExactly(statement);
    }

    @Test
    void aWholeProtocolIsReadWhateverSeparatesItsStatements() {
        PatientProtocol expected = PatientProtocol.none()
                .involving(Side.RIGHT)
                .withoutPassive()
                .withoutResisted()
                .limiting(
                        new RangeLimit(Measure.of("IP", Motion.FLEXION), Optional.of(Mode.ACTIVE), Value.Angle.of(40)))
                .limiting(new RangeLimit(
                        Measure.of("IP", Motion.EXTENSION), Optional.empty(), Value.Extension.deficit("20")));
        assertThat(PatientProtocol.parse("involved right; no passive, no resisted\nactive IP flexion at most 40\n\n"
                        + "IP extension lacks at least 20;"))
                .isEqualTo(expected);
    }

    @Test
    void nothingWrittenLimitsNothing() {
        assertThat(PatientProtocol.parse(" ; \n").isNone()).isTrue();
        assertThat(PatientProtocol.none().words()).isEqualTo("nothing is limited");
        assertThat(PatientProtocol.none().involving(Side.LEFT).isNone()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "no passiv",
                "IP flexion 40",
                "elbow flexion at most 40",
                "flexion at most 40",
                "IP flexion at most 200",
                "IP flexion lacks at least 20",
                "IP flexion at most -5",
                "index tip opposition gap at most 20",
            })
    void whatIsNotUnderstoodIsRefusedAndNeverLeftOut(String statement) {
        assertThatIllegalArgumentException().isThrownBy(() -> PatientProtocol.parse("no passive; " + statement));
    }

    @Test
    void anExtensionWithoutADirectionIsNotGuessed() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PatientProtocol.parse("IP extension at most 20"))
                .withMessageContaining("which side of neutral")
                .withMessageContaining("lacks at least 20")
                .withMessageContaining("hyperextends at most 20");
    }

    @Test
    void twoLimitsOrTwoHandsThatContradictAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PatientProtocol.parse("IP flexion at most 40; IP flexion at most 60"));
        assertThatIllegalArgumentException().isThrownBy(() -> PatientProtocol.parse("involved left; involved right"));
        assertThat(PatientProtocol.parse("IP flexion at most 40; IP flexion at most 40")
                        .ranges())
                .hasSize(1);
        assertThat(PatientProtocol.parse("active IP flexion at most 60; passive IP flexion at most 40")
                        .ranges())
                .hasSize(2);
    }

    @Test
    void everyProtocolIsReadBackAsItWasWritten() {
        Random random = new Random(7);
        List<Measure> measures = List.of(
                Measure.of("IP", Motion.FLEXION),
                Measure.of("MP", Motion.EXTENSION),
                Measure.of("CMC", Motion.EXTENSION),
                Measure.of("CMC", Motion.PALMAR_ABDUCTION),
                Measure.of("little DIP", Motion.FLEXION),
                Measure.of("wrist", Motion.RADIAL_DEVIATION));
        for (int i = 0; i < 500; i++) {
            PatientProtocol protocol = new PatientProtocol(
                    random.nextBoolean() ? Optional.empty() : Optional.of(Side.values()[random.nextInt(2)]),
                    random.nextBoolean(),
                    random.nextBoolean(),
                    measures.stream()
                            .filter(measure -> random.nextBoolean())
                            .map(measure -> limit(measure, random))
                            .toList());
            assertThat(PatientProtocol.parse(String.join("\n", protocol.statements())))
                    .isEqualTo(protocol);
        }
    }

    private static RangeLimit limit(Measure measure, Random random) {
        Optional<Mode> mode = random.nextBoolean() ? Optional.empty() : Optional.of(Mode.values()[random.nextInt(2)]);
        String degrees = String.valueOf(1 + random.nextInt(90)) + (random.nextBoolean() ? ".5" : "");
        if (measure.dimension() == Dimension.ANGLE) {
            return new RangeLimit(measure, mode, Value.Angle.of(degrees));
        }
        return switch (random.nextInt(3)) {
            case 0 -> new RangeLimit(measure, mode, Value.Extension.neutral());
            case 1 -> new RangeLimit(measure, mode, Value.Extension.deficit(degrees));
            default -> new RangeLimit(measure, mode, Value.Extension.hyperextension(degrees));
        };
    }
}
