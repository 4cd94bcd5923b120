// @ts-check
// Sums: tape arithmetic by the engine, the running tape of those that were kept, one of them in hand, and the readings
// that may be brought into one.
import { html } from "../../controls/ui.js";
import { Bring } from "./bring.js";
import { Line } from "./line.js";
import { WholeTape } from "./tape.js";
import { Writing } from "./writing.js";

/** @param {{place: string[]}} props */
export function Sums({ place: [name, id] }) {
  if (name === "tape") return html`<${WholeTape} />`;
  if (name === "bring") return html`<${Bring} />`;
  return name === "line" ? html`<${Line} id=${id} key=${id} />` : html`<${Writing} />`;
}
