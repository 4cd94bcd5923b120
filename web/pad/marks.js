// @ts-check
// The marks of the inch by their names, as a tape has them and the engine reads them. What stands next to what is their
// place in this row; nothing is worked out.

/** Those of a whole inch, down to thirty-seconds; the first is the inch itself. */
export const FINE = [
  "", "1/32", "1/16", "3/32", "1/8", "5/32", "3/16", "7/32", "1/4", "9/32", "5/16", "11/32", "3/8", "13/32", "7/16", "15/32",
  "1/2", "17/32", "9/16", "19/32", "5/8", "21/32", "11/16", "23/32", "3/4", "25/32", "13/16", "27/32", "7/8", "29/32",
  "15/16", "31/32",
];
/** Where the next inch begins, which is no mark of this one. */
const NEXT = null;
/** How many stand side by side: a sixteenth each, or a thirty-second of the half that is looked at closely. */
const WIDE = 17;
const HEIGHTS = ["inch", "half", "quarter", "eighth", "sixteenth", "fine"];
const PARTS = ["", "2", "4", "8", "16", "32"];

/** Whether a mark is a thirty-second that is nothing larger. @param {string} mark */
export const isFine = (mark) => FINE.includes(mark) && mark.endsWith("/32");

/** Those of a tape that is read to sixteenths. */
export const MARKS = FINE.filter((mark) => !isFine(mark));

/** How tall a mark is drawn. @param {string | null} mark */
export const heightOf = (mark) => HEIGHTS[PARTS.indexOf(mark?.split("/")[1] ?? "")];

/** The whole inch, or where it is looked at closely half of it, from a place on. @param {number | null} from */
export const marksFrom = (from) => (from === null ? [...MARKS, NEXT] : [...FINE, NEXT].slice(from, from + WIDE));

/** Where to look closely from, so that a mark stays where it stands in the whole inch, or next to it. @param {string} mark */
export const nearTo = (mark) => FINE.indexOf(mark) >> 1;

/** Which have their name printed, and the rest not to crowd them. @param {string | null} mark @param {boolean} near */
export const isPrinted = (mark, near) => ["half", "quarter", ...(near ? ["eighth"] : [])].includes(heightOf(mark));
