package foilwright.app;

import foilwright.head.HeadKind;
import foilwright.head.TapeMeasurements;
import java.util.Optional;

/**
 * Which head to look at.
 *
 * @param guest name or file of a guest, whose head it is; absent for a head by kind and tape
 * @param kind the default head that fills in what the tape did not measure; as the guest document
 *     says when absent
 * @param tapes measured here; each takes the place of the guest's
 * @param part as the guest document says when absent
 */
public record HeadRequest(
    Optional<String> guest,
    Optional<HeadKind> kind,
    TapeMeasurements tapes,
    Optional<PartWish> part) {}
