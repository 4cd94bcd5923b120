// @ts-check
// The sheet that every screen is written on: a line on top with its name and how things stand, the screen, the five tabs.
import { html, useEffect, useLayoutEffect, useRef } from "./ui.js";
import { link } from "./route.js";
import { Status } from "./status.js";
import { useNotebook } from "./notebook.js";

const TABS = [
  ["survey", "Survey"],
  ["pieces", "Pieces"],
  ["boards", "Boards"],
  ["sums", "Sums"],
  ["house", "House"],
];

/**
 * @param {{title: string, aside?: any, tab?: string, kind?: string, children?: any}} props
 *   `aside` stands at the right of the title instead of the status; a page without `tab` fills the screen
 */
export function Page({ title, aside, tab, kind = "", children }) {
  const heading = useRef(/** @type {HTMLElement | null} */ (null));
  const { spoken, trouble, arrived, newer } = useNotebook();
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
      <p class="aside">${aside ?? html`<${Status} />`}</p>
    </header>
    <main>${trouble ? html`<p class="wrong" role="alert">${trouble}</p>` : null}${children}</main>
    <p class="heard" role="status">${spoken}</p>
    ${tab && newer ? html`<p class="notice"><a href=${link("house")}>A new version is here: take it under House</a></p>` : null}
    ${tab ? html`<${Tabs} tab=${tab} />` : null}
  </div>`;
}

/** @param {{tab: string}} props */
function Tabs({ tab }) {
  return html`<nav class="tabs" aria-label="Screens">
    ${TABS.map(([key, name]) => html`<a href=${link(key)} aria-current=${key === tab ? "page" : null} key=${key}>${name}</a>`)}
  </nav>`;
}
