// @ts-check
// What lies over a photo: lines as they were drawn, and pins with their figures. Lines have a pale edge and pins a pale
// ring, so that both are seen on dark walls and on light ones.
import { html } from "../controls/ui.js";
import { WHOLE } from "./touched.js";

/** @typedef {import("./marked.js").Point} Point */
/** @typedef {{id: string, x: number, y: number, shown: string}} Pinned */

/** Beyond this part of the way a figure stands at its pin's other side, or it would run off the photo. */
const FAR = 6000;
const NEAR_TOP = 1000;

/**
 * @param {{lines: Point[][], pins: Pinned[], spot: Point | null, lit: string | null}} props `spot`: where the next pin
 *   goes; `lit`: the pin in hand
 */
export function Over({ lines, pins, spot, lit }) {
  return html`<svg class="over" aria-hidden="true" focusable="false">
    <svg viewBox="0 0 ${WHOLE} ${WHOLE}" preserveAspectRatio="none" width="100%" height="100%">
      ${lines.map((points, at) => html`<g key=${at}><polyline class="line-edge" points=${points.join(" ")} /><polyline class="line" points=${points.join(" ")} /></g>`)}
    </svg>
    ${pins.map((pin) => html`<${Pin} pin=${pin} lit=${pin.id === lit} key=${pin.id} />`)}
    ${spot ? html`<${Spot} spot=${spot} />` : null}
  </svg>`;
}

/** Where something stands, as SVG is told it. @param {number} part */
const at = (part) => `${part / 100}%`;

/** @param {{pin: Pinned, lit: boolean}} props */
function Pin({ pin: { x, y, shown }, lit }) {
  const far = x > FAR;
  return html`<g class=${lit ? "pin pin-lit" : "pin"}>
    <circle cx=${at(x)} cy=${at(y)} r="8" />
    <text x=${at(x)} y=${at(y)} dx=${far ? -14 : 14} dy=${y < NEAR_TOP ? 20 : -6} text-anchor=${far ? "end" : "start"}>${shown}</text>
  </g>`;
}

/** @param {{spot: Point}} props */
function Spot({ spot: [x, y] }) {
  return html`<g class="spot">
    ${["spot-edge", "spot-line"].map(
      (kind) => html`<g class=${kind} key=${kind}>
        <line x1=${at(x)} x2=${at(x)} y1="0" y2="100%" /><line x1="0" x2="100%" y1=${at(y)} y2=${at(y)} />
      </g>`,
    )}
    <circle cx=${at(x)} cy=${at(y)} r="12" />
  </g>`;
}
