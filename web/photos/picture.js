// @ts-check
// A picture whose bytes lie on this device, or are still to come; and whether the laptop has it.
import { html, useEffect, useState } from "../controls/ui.js";
import { useNotebook } from "../notebook/notebook.js";
import { say } from "../words/words.js";

/** @typedef {import("./taken.js").Photo} Photo */

/**
 * @param {Photo} photo
 * @returns {{url: string, known: boolean, here: boolean, there: boolean}} `known` once this device was asked; `url` once
 *   its size is known too, or what stands under it would move when it is
 */
export function usePicture({ blob, type }) {
  const { journal, services } = useNotebook();
  const [standing, setStanding] = useState({ known: false, here: false, there: false });
  const [url, setUrl] = useState("");
  useEffect(() => {
    const look = async () => {
      const held = await journal.heldOf(blob);
      setStanding({ known: true, here: Boolean(held?.whole), there: Boolean(held?.there) });
    };
    const stops = [services.sync.onState(look), journal.onChange(look)];
    look();
    return () => stops.forEach((stop) => stop());
  }, [blob]);
  useEffect(() => {
    if (!standing.here) return undefined;
    let made = "";
    let left = false;
    journal.attachment({ blob, type }).then(async (/** @type {Blob | null} */ found) => {
      if (left) return;
      if (!found) return setStanding((was) => ({ ...was, here: false }));
      made = URL.createObjectURL(found);
      await sized(made);
      if (!left) setUrl(made);
    });
    return () => {
      left = true;
      URL.revokeObjectURL(made);
    };
  }, [blob, standing.here]);
  return { url, ...standing };
}

/** One that cannot be decoded is shown as broken where it stands. @param {string} url */
async function sized(url) {
  const image = new Image();
  image.src = url;
  await image.decode().catch(() => {});
}

/** How it stands, in words; nothing where it is here and on the laptop. @param {{known: boolean, here: boolean, there: boolean}} picture */
export function standingOf({ known, here, there }) {
  if (!known || (here && there)) return "";
  return say(here ? "photo-here" : "photo-away");
}

/** @param {{photo: Photo, words: string, picture: ReturnType<typeof usePicture>}} props `words`: what one would see */
export function Picture({ photo, words, picture }) {
  const [broken, setBroken] = useState(false);
  if (broken) return html`<span class="no-picture">${say("photo-broken", { photo: words })}</span>`;
  if (!picture.url) return html`<span class="no-picture">${words}</span>`;
  return html`<img src=${picture.url} alt=${words} decoding="async" onError=${() => setBroken(true)} key=${photo.blob} />`;
}
