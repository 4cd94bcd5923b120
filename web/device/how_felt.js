// @ts-check
// Choosing how a save is felt or heard on this device.
import { html, useState } from "../controls/ui.js";
import { Choice } from "../controls/controls.js";
import { say } from "../words/words.js";
import { want, wanted, ways } from "./felt.js";

/** What is to be felt or heard, and what it is like; nothing to choose on a device that can do neither. */
export function Felt() {
  const [way, setWay] = useState(wanted);
  const all = ways();
  if (all.length === 1) return null;
  const pick = (/** @type {import("./felt.js").Way} */ one) => {
    want(one);
    setWay(one);
  };
  return html`<details class="more">
    <summary>${say("felt")}</summary>
    <${Choice} name="felt" legend=${say("felt.choose")} value=${way} onPick=${pick} choices=${all.map((one) => [one, say(`felt-${one}`)])} />
  </details>`;
}
