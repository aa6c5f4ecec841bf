package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The heads that were fitted last, so that planning again on one of them need not measure it anew.
 */
final class FittedHeads {
  private static final int MOST = 8;

  /** All that a head depends on. */
  private record Key(
      HeadKind kind,
      TapeMeasurements tapes,
      HairlineSettings hairline,
      PartSetting part,
      HeadSettings settings) {}

  private final Map<Key, Head.Fitted> fitted =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Head.Fitted> eldest) {
          return size() > MOST;
        }
      };

  synchronized Head.Fitted fit(GuestDocument guest, HeadSettings settings) {
    Key key = new Key(guest.head(), guest.tapes(), guest.hairline(), guest.part(), settings);
    return fitted.computeIfAbsent(key, k -> guest.fitHead(settings));
  }
}
