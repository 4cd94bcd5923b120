// @ts-check
// What a printed sheet is headed with: house, room, day, and how many entries the notebook held. It stands under the title
// of the first page, and at the top of every other, or the second page on a bench would be of any room and of any day.
import { html, useLayoutEffect } from "../controls/ui.js";
import { useNotebook } from "../notebook/notebook.js";
import { say } from "../words/words.js";

/** The margins of the pages, which no element reaches; null where the browser takes no sheet of styles from a script. */
const margins = makeMargins();
/** What the browser counts while it prints, as the words leave its place. */
const [PAGE, PAGES] = ["\u0001", "\u0002"];

function makeMargins() {
  if (!("adoptedStyleSheets" in document)) return null;
  const sheet = new CSSStyleSheet();
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  return sheet;
}

/** @param {{title: string, of?: string}} props `of`: a room or a house, where it is not the room in hand */
export function OnPaper({ title, of }) {
  const { room: inHand, outline, counts } = useNotebook();
  const room = of ? outline.rooms.get(of) : inHand;
  const house = outline.houses.find((/** @type {any} */ one) => one.id === (room?.house ?? of));
  const words = [house?.name, room?.name, new Date().toLocaleDateString(), say("page-revision", { entries: String(counts.entries) })];
  const said = words.filter(Boolean).join(" · ");
  useLayoutEffect(() => head(`${title} · ${said}`, said), [title, said]);
  return html`<p class="on-paper">${said}</p>`;
}

/** Labels have no title: the margin of their sheet is all that is not stuck to a board. @param {string} onward @param {string} first */
function head(onward, first) {
  const counted = quoted(say("page-counted", { page: PAGE, pages: PAGES }));
  const counting = counted.replace(PAGE, '" counter(page) "').replace(PAGES, '" counter(pages) "');
  margins?.replaceSync(`@page { @top-left { content: ${quoted(onward)} } @top-right { content: ${counting} } }
    @page :first { @top-left { content: none } }
    @page thirty { @top-left { content: ${quoted(first)} } }
    @page twenty-one { @top-left { content: ${quoted(first)} } }`);
}

/** A name may hold what would end a string of CSS. @param {string} text */
function quoted(text) {
  return `"${text.replace(/["\\\n\r\f]/g, (mark) => `\\${mark.charCodeAt(0).toString(16)} `)}"`;
}
