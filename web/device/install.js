// @ts-check
// Keeping the page as an app: by the browser's own offer, or by the steps in words. What a browser calls itself decides
// those words and nothing else.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { useWatched } from "../controls/watch.js";
import { Listeners } from "../listeners.js";
import { say } from "../words/words.js";

/** @type {Listeners<[]>} */
const listeners = new Listeners();
/** The browser's offer, good for one time; and whether it was installed from this page. */
let standing = { offer: /** @type {any} */ (null), done: false };

/** @param {Partial<typeof standing>} news */
function become(news) {
  standing = { ...standing, ...news };
  listeners.tell();
}

/** From the start of the page on: a browser makes its offer once, before anybody looks for it. */
export function hearOffer() {
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault(); // else some browsers lay it over the lower half, where a reading is entered
    become({ offer: event });
  });
  addEventListener("appinstalled", () => become({ offer: null, done: true }));
}

/** Whether this page runs as an app already. */
const isInstalled = () => matchMedia("(display-mode: standalone)").matches || /** @type {any} */ (navigator).standalone === true;

/** The kind of device, for the words. @returns {"home" | "android" | "table"} */
function kind() {
  const { userAgent, maxTouchPoints } = navigator;
  if (/iPhone|iPad|iPod/.test(userAgent)) return "home";
  if (/Macintosh/.test(userAgent) && maxTouchPoints > 1) return "home"; // an iPad that asks for pages made for a table
  return /Android/.test(userAgent) ? "android" : "table";
}

/** Nothing where it is done, and where no browser does it: what to do there first, the offline cover says. */
export function Install() {
  const { offer, done } = useWatched(
    (listen) => listeners.add(listen),
    () => standing,
  );
  if (isInstalled() || !isSecureContext) return null;
  if (done) return html`<p role="status">${say("install.done")}</p>`;
  if (offer) {
    const take = () => {
      become({ offer: null });
      offer.prompt();
    };
    return html`<p>${say("install.what")}</p><${Button} onTouch=${take}>${say("install.take")}<//>`;
  }
  const where = kind();
  return html`<details class="more">
    <summary>${say("install")}</summary>
    <p>${say(`install-${where}`)}</p>
    <p>${say("install.what")}</p>
    ${where === "home" ? html`<p>${say("install.empty")}</p>` : null}
  </details>`;
}
