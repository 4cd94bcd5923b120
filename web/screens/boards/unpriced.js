// @ts-check
// Boards of a profile that nobody has priced yet: the usual lengths, each to be priced or left empty, asked for here where
// they are first needed.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";
import { setSetting } from "../../notebook/write.js";
import { say } from "../../words/words.js";

const PRICE = /^\$?\d+(\.\d{1,2})?$/;

/** @param {{profile: string, setting: string, lengths: string[]}} props */
export function Unpriced({ profile_shown: profile, setting, lengths }) {
  const { room, journal, act } = useNotebook();
  const [prices, setPrices] = useState(/** @type {Record<string, string>} */ ({}));
  const priced = lengths.filter((length) => prices[length]?.trim());
  const ready = priced.length && priced.every((length) => PRICE.test(prices[length].trim()));
  const rows = priced.map((length) => ({ length, price: prices[length].trim(), limit: null }));
  const save = () => act(() => setSetting(journal, room.house, setting, rows), say("boards-prices.done", { profile }));
  return html`<section class="unpriced" aria-label=${say("boards-prices", { profile })}>
    <h3>${say("boards-prices.ask", { profile })}</h3>
    <p class="pencil">${say("boards-prices.hint")}</p>
    <div class="leans">${lengths.map(
      (length) => html`<label key=${length}>${length}
        <input type="text" inputmode="decimal" autocomplete="off" value=${prices[length] ?? ""}
          onInput=${(/** @type {any} */ event) => setPrices({ ...prices, [length]: event.currentTarget.value })} /></label>`,
    )}</div>
    <${Button} kind="main" disabled=${!ready} onTouch=${save}>${say("boards-prices.save")}<//>
  </section>`;
}
