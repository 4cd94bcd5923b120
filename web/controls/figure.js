// @ts-check
// Figures: a length as it is drawn on paper, whole number, stacked fraction, small unit. It takes the engine's text apart
// to set it; it never works anything out.
import { html } from "./ui.js";

const INCHES = /^(-?)(\d*)(?:(?:^|\s|(?<=-))(\d+)\/(\d+))?"?$/;

/**
 * The pieces that a figure is set from, or null for a text that is not in plain inches.
 * @param {string} shown the engine's text, such as 63 1/4", or what has been typed so far
 */
export function splitFigure(shown) {
  const found = INCHES.exec(shown.trim());
  if (!found || (!found[2] && !found[3])) return null;
  return { sign: found[1] ? "−" : "", whole: found[2], above: found[3], below: found[4] };
}

/**
 * @param {{shown?: string | null, size?: "row" | "big" | "huge", unit?: boolean, lean?: string}} props
 */
export function Figure({ shown, size = "row", unit = true, lean = "" }) {
  const parts = splitFigure(shown ?? "");
  if (!parts) return html`<span class="figure figure-${size}">${shown}</span>`;
  const said = `${parts.sign}${parts.whole}${parts.above ? ` ${parts.above}/${parts.below}` : ""}${unit ? " in" : ""} ${lean}`;
  return html`<span class="figure figure-${size}">
    <span class="heard">${said.trim()}</span>
    <span class="seen" aria-hidden="true">
      ${parts.sign}${parts.whole}${
        parts.above ? html`<span class="fraction"><span>${parts.above}</span><span>${parts.below}</span></span>` : null
      }${unit ? html`<span class="unit">in</span>` : null}${lean ? html`<span class="lean">${lean}</span>` : null}
    </span>
  </span>`;
}
