package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.hair.HairProfile;
import foilwright.head.HairlineSettings;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.service.SafetyAnswers;
import foilwright.units.Length;
import java.util.Optional;

/** What is assumed when no guest is named: a usual head, usual hair, and nothing on file. */
final class Nobody {
  /** Hair length all over. */
  static final Length LENGTH = Length.ofMillimetres(300);

  static final GuestDocument GUEST =
      new GuestDocument(
          "guest-00",
          HeadKind.WOMAN,
          TapeMeasurements.NONE,
          HairlineSettings.USUAL,
          PartSetting.NONE,
          HairProfile.usual(LENGTH),
          GuestDocument.History.NONE,
          SafetyAnswers.NONE,
          Optional.empty());

  private Nobody() {}
}
