// @ts-check
// Typing: how touches on digits, marks and words build the text of a reading. The text is all there is: nothing here
// knows what it is worth, and whatever a person types or dictates instead is left as they put it.

const PLAIN = /^(\d*)(?:(?:^|\s+)(\d{1,2}\/\d{1,2}))?(?:(?:^|\s+)(shy|strong))?$/;

/**
 * A text that only the pad could have made, taken apart; null when a person wrote something freer.
 * @param {string} text
 */
export function splitPlain(text) {
  const found = PLAIN.exec(text.trim());
  return found && { whole: found[1] ?? "", mark: found[2] ?? "", lean: found[3] ?? "" };
}

/** @param {{whole: string, mark: string, lean: string}} parts */
function join({ whole, mark, lean }) {
  return [whole, mark, lean].filter(Boolean).join(" ");
}

/** One more digit of whole inches. @param {string} text @param {string} digit */
export function addDigit(text, digit) {
  const parts = splitPlain(text);
  return parts ? join({ ...parts, whole: parts.whole + digit }) : text + digit;
}

/** The mark that the tape shows; an empty label is the whole inch itself. @param {string} text @param {string} mark */
export function setMark(text, mark) {
  const parts = splitPlain(text);
  if (parts) return join({ ...parts, mark });
  return mark ? `${text.trimEnd()} ${mark}` : text;
}

/** A hair under or over the mark, or neither. @param {string} text @param {string} lean */
export function setLean(text, lean) {
  const parts = splitPlain(text);
  if (parts) return join({ ...parts, lean });
  return `${text.replace(/\s*\b(shy|strong)\s*$/, "")} ${lean}`.trim();
}

/** Takes back the last thing said: the hair, then the mark, then one digit. @param {string} text */
export function rubOut(text) {
  const parts = splitPlain(text);
  if (!parts) return text.slice(0, -1);
  if (parts.lean) return join({ ...parts, lean: "" });
  if (parts.mark) return join({ ...parts, mark: "" });
  return parts.whole.slice(0, -1);
}
