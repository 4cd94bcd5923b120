// @ts-check
// The sheet that every screen is written on: a line on top with its name and how things stand, the screen, the tabs.
// At the table a screen may stand beside a list instead, on the sheet of that list.
import { createContext, html, useContext, useEffect, useLayoutEffect, useRef } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { link } from "../controls/route.js";
import { useWide } from "../controls/wide.js";
import { later } from "../later.js";
import { useNotebook } from "../notebook/notebook.js";
import { INVENTED } from "../notebook/write.js";
import { say } from "../words/words.js";
import { strikeInvented } from "./invented.js";
import { Status } from "./status.js";

/** Unseen on a screen. */
const OnPaper = later(async () => (await import("./on_paper.js")).OnPaper);

export const TABS = ["survey", "pieces", "boards", "cover", "supplies", "sums", "house"];

/** Whether a page stands beside a list: it is then a part of the list's page. */
export const Beside = createContext(false);

/** The list of keys, which stands on every page unseen. */
export function showKeys() {
  /** @type {HTMLDialogElement | null} */ (document.querySelector("dialog.keys"))?.showModal();
}

/**
 * @param {{title: string, aside?: any, tab?: string, kind?: string, older?: boolean, of?: string, view?: any, children?: any}} props
 *   `aside` stands at the right of the title instead of the status, null for nothing; a page without `tab` fills the screen;
 *   `older`: what is shown was worked out before the last entries were written;
 *   `of`: the room or house that it is of, where that is not the room in hand;
 *   `view`: what stays in view beside the page at the table, and nowhere else
 */
export function Page(props) {
  return useContext(Beside) ? html`<${Part} ...${props} />` : html`<${Sheet} ...${props} />`;
}

/** @param {{title: string, kind?: string, older?: boolean, children?: any}} props */
function Part({ title, kind = "", older = false, children }) {
  return html`<section class="part ${kind}" aria-label=${title}><h2>${title}</h2><${Older} older=${older} />${children}</section>`;
}

/** @param {{title: string, aside?: any, tab?: string, kind?: string, older?: boolean, of?: string, view?: any, children?: any}} props */
function Sheet({ title, aside, tab, kind = "", older = false, of, view, children }) {
  const seen = useWide() ? view : null;
  const heading = useRef(/** @type {HTMLElement | null} */ (null));
  const { spoken, told, trouble, arrived, newer, overdue, room } = useNotebook();
  useEffect(() => {
    document.title = `${title} · Scantling`;
  }, [title]);
  useLayoutEffect(() => {
    // Before the screen is drawn: later, a finger may already be in a field, and would find itself out of it.
    if (arrived) heading.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, []);
  return html`<div class="page ${kind}">
    <header class="bar">
      <h1 ref=${heading} tabindex="-1">${title}</h1>
      ${aside === undefined ? html`<${Status} />` : aside !== null && html`<p class="aside">${aside}</p>`}
      <${OnPaper} title=${title} of=${of} />
    </header>
    ${tab && room?.house === INVENTED ? html`<${Invented} />` : null}
    <div class="spread">
      <main>${trouble ? html`<p class="wrong" role="alert">${trouble}</p>` : null}<${Older} older=${older} />${children}</main>
      ${seen ? html`<aside class="in-view" aria-label=${say("page-view")}>${seen}</aside>` : null}
    </div>
    <p class=${told ? "notice" : "heard"} role="status">${spoken}</p>
    ${tab && newer ? html`<p class="notice"><a href=${link("house")}>${say("page-newer")}</a></p>` : null}
    ${tab && overdue ? html`<${Overdue} />` : null}
    ${tab ? html`<${Tabs} tab=${tab} />` : null}
  </div>`;
}

/** A room that is not real says so on every screen. */
function Invented() {
  const { journal, act } = useNotebook();
  const strike = () => act(() => strikeInvented(journal), say("invented-struck"));
  return html`<div class="notice invented"><p>${say("invented")}</p><${Button} onTouch=${strike}>${say("strike.it")}<//></div>`;
}

/** Some of what was written is on this device alone, and has been for long. */
function Overdue() {
  const { alone } = useNotebook().counts;
  return html`<p class="notice"><a href=${link("house")}>${say("page-overdue", { count: alone })}</a></p>`;
}

/**
 * What is on the page was worked out before the last entries were written. Once that is so no longer its place stays, empty,
 * for what stands under it not to move.
 * @param {{older: boolean}} props
 */
function Older({ older }) {
  const { engine } = useNotebook();
  const told = useRef("");
  if (older) told.current = say(engine === "waking" ? "page-older.waking" : "page-older");
  return told.current ? html`<p class="pencil older ${older ? "" : "no-more"}" role="status">${told.current}</p>` : null;
}

/** @param {{tab: string}} props */
function Tabs({ tab }) {
  return html`<nav class="tabs" aria-label=${say("page-screens")}>
    ${TABS.map((key) => html`<a href=${link(key)} aria-current=${key === tab ? "page" : null} key=${key}>${say(`screen-${key}`)}</a>`)}
    ${useWide() ? html`<button class="button button-plain" onClick=${showKeys}>${say("keys")}</button>` : null}
  </nav>`;
}
