package foilwright.web;

import foilwright.app.Draft;
import foilwright.pattern.Extent;
import foilwright.problem.Problem;
import foilwright.units.Length;
import foilwright.web.FormField.Choice;
import foilwright.web.FormField.Look;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Fields over a document. Each knows where its value lies and how what is typed goes back there;
 * whether it can stand there is for the document's own reader to say.
 */
final class Form {
  /** What typing into a field does. */
  interface Setter {
    /** The document with what was typed, which is empty to take the value out. */
    Draft set(Draft draft, String text);
  }

  /**
   * What became of a form that was sent.
   *
   * @param draft with all that can stand where it was typed
   * @param wrong by field what cannot, as typed
   * @param why by field why it cannot
   * @param changes what was changed, one sentence part each
   */
  record Sent(
      Draft draft, Map<String, String> wrong, Map<String, String> why, List<String> changes) {}

  private final Draft draft;
  private final LengthUnit unit;
  private final List<FormGroup> groups = new ArrayList<>();
  private final Map<String, Setter> setters = new LinkedHashMap<>();
  private final Map<String, UnaryOperator<Draft>> acts = new LinkedHashMap<>();

  Form(Draft draft, LengthUnit unit) {
    this.draft = draft;
    this.unit = unit;
  }

  LengthUnit unit() {
    return unit;
  }

  List<FormGroup> groups() {
    return groups;
  }

  /** Begins a group; the fields and buttons that follow belong to it. */
  Form group(String id, String title, String about) {
    groups.add(new FormGroup(id, title, about, List.of(), List.of()));
    return this;
  }

  /** Any field. */
  Form field(FormField field, Setter setter) {
    setters.put(field.key(), setter);
    FormGroup last = groups.remove(groups.size() - 1);
    List<FormField> fields = new ArrayList<>(last.fields());
    fields.add(field);
    groups.add(new FormGroup(last.id(), last.title(), last.about(), fields, last.acts()));
    return this;
  }

  /** A button. */
  Form act(String act, String words, UnaryOperator<Draft> change) {
    acts.put(act, change);
    FormGroup last = groups.remove(groups.size() - 1);
    List<FormGroup.Act> buttons = new ArrayList<>(last.acts());
    buttons.add(new FormGroup.Act(act, words));
    groups.add(new FormGroup(last.id(), last.title(), last.about(), last.fields(), buttons));
    return this;
  }

  /** What a button that belongs to no group does. */
  Form hiddenAct(String act, UnaryOperator<Draft> change) {
    acts.put(act, change);
    return this;
  }

  // Kinds of fields.

  private static FormField typed(
      String key, String label, String value, String unit, String step, String hint) {
    return new FormField(key, Look.TYPED, label, value, unit, step, hint, List.of(), "", "");
  }

  private static Setter put(String path) {
    return (d, text) -> text.isEmpty() ? d.without(path) : d.with(path, text);
  }

  Form text(String path, String label, String hint) {
    return field(typed(path, label, draft.text(path), "", "", hint), put(path));
  }

  /** A length; empty where the document has none. */
  Form length(String path, String label, String hint) {
    return length(path, label, hint, "", put(path));
  }

  /** A length that lights a drawing. */
  Form drawnLength(String path, String label, String hint, String drawing) {
    return length(path, label, hint, drawing, put(path));
  }

  Form length(String path, String label, String hint, Setter setter) {
    return length(path, label, hint, "", setter);
  }

  private Form length(String path, String label, String hint, String drawing, Setter setter) {
    String value = draft.text(path);
    boolean share = value.contains(" of ");
    String shown = share || value.isEmpty() ? value : unit.number(Length.parse(value));
    return field(
        new FormField(
            path,
            Look.TYPED,
            label,
            shown,
            share ? "" : unit.word(),
            share ? "" : unit.step(),
            share && hint.isEmpty() ? "share of the head; a length may stand here too" : hint,
            List.of(),
            "",
            drawing),
        (d, text) -> setter.set(d, text.isEmpty() ? "" : lengthText(text)));
  }

  /** What was typed as a length of the document: a share of the head, or a number and its unit. */
  private String lengthText(String text) {
    if (text.contains(" of ")) {
      return Extent.parse(text).text();
    }
    return unit.withUnit(text);
  }

  /** A number with a unit of its own behind it in the document. */
  Form quantity(String path, String label, String word, String step, String hint) {
    return quantity(path, label, word, step, hint, put(path));
  }

  Form quantity(String path, String label, String word, String step, String hint, Setter setter) {
    String value = draft.text(path);
    String shown =
        value.endsWith(" " + word) ? value.substring(0, value.length() - word.length() - 1) : value;
    return field(
        typed(path, label, shown, shown.equals(value) && !value.isEmpty() ? "" : word, step, hint),
        (d, text) -> setter.set(d, text.isEmpty() ? "" : withUnit(text, word)));
  }

  private static String withUnit(String text, String word) {
    String point = text.replace(',', '.');
    return point.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)") ? point + " " + word : text;
  }

  /** A bare number. */
  Form number(String path, String label, String word, String step, String hint) {
    return field(
        typed(path, label, draft.text(path), word, step, hint),
        (d, text) -> text.isEmpty() ? d.without(path) : d.with(path, number(text)));
  }

  /** The number, or the text itself, which the reader then refuses in its own words. */
  static Object number(String text) {
    String point = text.replace(',', '.');
    return point.matches("[+-]?\\d{1,12}(\\.\\d{1,12})?") ? new BigDecimal(point) : text;
  }

  /** One of several words; {@code none} is shown for an absent value, empty when it may not be. */
  Form choice(String path, String label, String none, List<String> words) {
    List<Choice> choices = new ArrayList<>();
    if (!none.isEmpty() && !words.contains(none)) {
      choices.add(new Choice("", none));
    }
    words.forEach(word -> choices.add(Choice.of(word)));
    String value = draft.text(path);
    return choice(
        path,
        label,
        value.isEmpty() && words.contains(none) ? none : value,
        "",
        choices,
        put(path));
  }

  Form choice(
      String key, String label, String value, String hint, List<Choice> choices, Setter setter) {
    return field(
        new FormField(key, Look.CHOSEN, label, value, "", "", hint, choices, "", ""), setter);
  }

  /** True, or left out. */
  Form yesNo(String path, String label) {
    return field(
        new FormField(
            path,
            Look.YES_NO,
            label,
            draft.text(path).equals("true") ? "yes" : "",
            "",
            "",
            "",
            List.of(),
            "",
            ""),
        (d, text) -> text.equals("yes") ? d.with(path, true) : d.without(path));
  }

  /** Any number of words; the value is left out when there is none. */
  Form several(String path, String label, List<String> words, String hint) {
    return field(
        new FormField(
            path,
            Look.SEVERAL,
            label,
            String.join(FormField.AND, draft.texts(path)),
            "",
            "",
            hint,
            words.stream().map(Choice::of).toList(),
            "",
            ""),
        (d, text) ->
            text.isEmpty()
                ? d.without(path)
                : d.with(path, List.of(text.split(FormField.AND, -1))));
  }

  /** A list of short texts, typed with commas between. */
  Form list(String path, String label, String hint) {
    return field(
        typed(path, label, String.join(", ", draft.texts(path)), "", "", hint),
        (d, text) ->
            text.isEmpty()
                ? d.without(path)
                : d.with(path, List.of(text.strip().split("\\s*,\\s*", -1))));
  }

  // A form that was sent.

  /**
   * Takes in what was sent: each field that differs from what it shows is tried by itself, and what
   * the reader refuses stays out.
   *
   * @param typed by field; fields that are missing change nothing
   */
  Sent send(Map<String, List<String>> typed) {
    Draft now = draft;
    Map<String, String> wrong = new LinkedHashMap<>();
    Map<String, String> why = new LinkedHashMap<>();
    List<String> changes = new ArrayList<>();
    for (FormField field : groups.stream().flatMap(g -> g.fields().stream()).toList()) {
      List<String> values = typed.get(field.key());
      if (values == null) {
        continue;
      }
      String text =
          values.stream()
              .map(String::strip)
              .filter(v -> !v.isEmpty())
              .collect(Collectors.joining(FormField.AND));
      if (text.equals(field.value())) {
        continue;
      }
      try {
        Draft changed = setters.get(field.key()).set(now, text);
        Optional<String> error = newError(now, changed);
        if (error.isEmpty()) {
          now = changed;
          changes.add(change(field, text));
        } else {
          wrong.put(field.key(), text);
          why.put(field.key(), error.get());
        }
      } catch (IllegalArgumentException e) {
        wrong.put(field.key(), text);
        why.put(field.key(), e.getMessage());
      }
    }
    String act = typed.getOrDefault("do", List.of("")).get(0);
    if (!act.isEmpty()) {
      UnaryOperator<Draft> change = acts.get(act);
      if (change == null) {
        why.put("", "there is nothing to do it to any more; load the page again");
      } else {
        Draft changed = change.apply(now);
        Optional<String> error = newError(now, changed);
        error.ifPresent(e -> why.put("", e));
        now = error.isPresent() ? now : changed;
      }
    }
    return new Sent(now, wrong, why, changes);
  }

  private static String change(FormField field, String text) {
    String shown = text.isEmpty() ? "nothing" : text.replace(FormField.AND, ", ");
    return field.label() + ": " + (field.look() == Look.YES_NO && text.isEmpty() ? "no" : shown);
  }

  /** What the reader says against a draft that it did not say before. */
  private static Optional<String> newError(Draft before, Draft after) {
    List<Problem> errors = after.errors();
    if (errors.isEmpty()) {
      return Optional.empty();
    }
    Set<Problem> known = Set.copyOf(before.errors());
    return errors.stream()
        .filter(e -> !known.contains(e))
        .findFirst()
        .map(e -> e.message() + "; " + e.cure());
  }

  /** Groups with what is wrong at its field. */
  static List<FormGroup> marked(List<FormGroup> groups, Sent sent) {
    return groups.stream()
        .map(
            group ->
                new FormGroup(
                    group.id(),
                    group.title(),
                    group.about(),
                    group.fields().stream()
                        .map(
                            f ->
                                sent.why().containsKey(f.key())
                                    ? f.wrong(sent.wrong().get(f.key()), sent.why().get(f.key()))
                                    : f)
                        .toList(),
                    group.acts()))
        .toList();
  }
}
