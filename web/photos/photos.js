// @ts-check
// The photos of one thing, small, and the ways to take another. A photo is made smaller first, which may take a second;
// meanwhile everything else goes on, and who walks away finds it saved all the same.
import { html, useMemo, useState } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { link } from "../controls/route.js";
import { useNotebook } from "../notebook/notebook.js";
import { strikeAll } from "../notebook/write.js";
import { say } from "../words/words.js";
import { photosIn, subjectOf } from "./taken.js";
import { Picture, standingOf, usePicture } from "./picture.js";
import { smaller } from "./smaller.js";

/** @typedef {import("./taken.js").Photo} Photo */

/** What a photo shows and when it was taken, for eyes and ears. @param {Photo} photo @param {any} notebook */
export function wordsOf({ of, name, stamp }, { outline, entries, journal }) {
  const day = journal.writtenAt(stamp).toLocaleDateString(undefined, { dateStyle: "medium" });
  return say(name ? "photo-words.named" : "photo-words", { subject: subjectOf(of, outline, entries), day, name });
}

/** @param {{of: string, from: string[]}} props `from`: the place that these stand at, to come back to */
export function Photos({ of, from }) {
  const notebook = useNotebook();
  const { entries, outline } = notebook;
  const photos = useMemo(() => photosIn(entries).filter((photo) => photo.of === of), [entries, of]);
  const subject = subjectOf(of, outline, entries);
  const [standing, struck] = [photos.filter((one) => !one.struck), photos.filter((one) => one.struck)];
  return html`<section class="photos" aria-label=${say("photos", { subject })}>
    ${
      standing.length
        ? html`<ul class="pictures">${standing.map((photo) => html`<${Small} photo=${photo} from=${from} key=${photo.id} />`)}</ul>`
        : null
    }
    <${Take} of=${of} subject=${subject} />
    ${
      struck.length
        ? html`<details class="more"><summary>${say("photos.struck")}</summary>
            <ul class="rows">${struck.map((photo) => html`<${StruckLine} photo=${photo} key=${photo.id} />`)}</ul></details>`
        : null
    }
  </section>`;
}

/** @param {{photo: Photo, from: string[]}} props */
function Small({ photo, from }) {
  const notebook = useNotebook();
  const picture = usePicture(photo);
  const stands = standingOf(picture);
  return html`<li>
    <a class="picture" href=${link("photo", photo.id, ...from)}><${Picture} photo=${photo} words=${wordsOf(photo, notebook)} picture=${picture} /></a>
    ${photo.name ? html`<small>${photo.name}</small>` : null}
    ${stands ? html`<small>${stands}</small>` : null}
  </li>`;
}

/** With the camera, or from what the device has. @param {{of: string, subject: string}} props */
function Take({ of, subject }) {
  const { journal, act, fail } = useNotebook();
  const [left, setLeft] = useState(0);
  const keep = async (/** @type {File} */ file) => {
    try {
      const small = await smaller(file);
      await act(() => journal.attach(of, small), say("photo-take.done", { subject }));
      return "";
    } catch (failure) {
      return /** @type {Error} */ (failure).message;
    } finally {
      setLeft((many) => many - 1);
    }
  };
  const take = async (/** @type {File[]} */ files) => {
    setLeft((many) => many + files.length);
    let wrong = "";
    for (const file of files) wrong = (await keep(file)) || wrong; // one after another: each takes much memory
    if (wrong) fail(wrong);
  };
  return html`<div class="side-by-side">
      <${Chosen} words=${say("photo-take")} label=${say("photo-take.heard", { subject })} camera onFiles=${take} />
      <${Chosen} words=${say("photo-choose")} label=${say("photo-choose.heard", { subject })} onFiles=${take} />
    </div>
    ${left > 0 ? html`<p class="pencil" role="status">${say("photo-take.smaller")}</p>` : null}`;
}

/** @param {{words: string, label: string, camera?: boolean, onFiles: (files: File[]) => void}} props */
function Chosen({ words, label, camera = false, onFiles }) {
  const choose = (/** @type {any} */ event) => {
    const files = [...event.currentTarget.files];
    event.currentTarget.value = "";
    if (files.length) onFiles(files);
  };
  return html`<label class="button button-side file"><span>${words}</span>
    <input type="file" aria-label=${label} accept="image/*" capture=${camera ? "environment" : null} multiple=${!camera}
      onChange=${choose} /></label>`;
}

/** @param {{photo: Photo}} props */
function StruckLine({ photo }) {
  const notebook = useNotebook();
  const { journal, act } = notebook;
  const words = wordsOf(photo, notebook);
  const said = say("restore.text", { what: words });
  const restore = () => act(() => strikeAll(journal, photo.strikes, "restored by hand"), said);
  return html`<li class="row">
    <span class="row-words"><s>${words}</s></span>
    <${Button} label=${say("photo-restore.heard", { photo: words })} onTouch=${restore}>${say("restore")}<//>
  </li>`;
}
