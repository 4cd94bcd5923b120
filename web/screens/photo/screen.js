// @ts-check
// One photo, as large as the screen: when it was taken, how far it has come, and the way to strike it.
import { html, useMemo } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { photosIn } from "../../photos/taken.js";
import { strikeAll, strikeOut } from "../../notebook/write.js";
import { wordsOf } from "../../photos/photos.js";
import { Picture, standingOf, usePicture } from "../../photos/picture.js";

/** @param {{place: string[]}} props the photo, and the place to go back to */
export function PhotoInHand({ place: [id, ...from] }) {
  const { entries } = useNotebook();
  const photo = useMemo(() => photosIn(entries).find((one) => one.id === id), [entries, id]);
  const back = from[0] ? from : ["survey"];
  if (!photo) {
    return html`<${Page} title="A photo" tab=${back[0]}>
      <p>There is no photo here now.</p>
      <p class="onward"><a href=${link(...back)}>Back</a></p>
    <//>`;
  }
  return html`<${Large} photo=${photo} back=${back} key=${id} />`;
}

/** @param {{photo: import("../../photos/taken.js").Photo, back: string[]}} props */
function Large({ photo, back }) {
  const notebook = useNotebook();
  const picture = usePicture(photo);
  const words = wordsOf(photo, notebook);
  return html`<${Page} title=${words} aside=${standingOf(picture) || " "} tab=${back[0]} kind="photo">
    <figure class="large"><${Picture} photo=${photo} words=${words} picture=${picture} /></figure>
    ${photo.struck ? html`<p class="stands">struck</p>` : null}
    <div class="low last-row">
      <${Button} onTouch=${() => go(...back)}>Back<//>
      <${Strike} photo=${photo} words=${words} back=${back} />
    </div>
  <//>`;
}

/** @param {{photo: import("../../photos/taken.js").Photo, words: string, back: string[]}} props */
function Strike({ photo, words, back }) {
  const { journal, act } = useNotebook();
  const restore = () => act(() => strikeAll(journal, photo.strikes, "restored by hand"), `${words}: restored`);
  const strike = async () => {
    const stays = stayHere();
    const struck = await act(() => strikeOut(journal, "attachment", { attachment: photo.id }, "struck by hand").then(() => true), `${words}: struck`);
    if (struck && stays()) go(...back);
  };
  if (photo.struck) return html`<${Button} onTouch=${restore}>Restore this photo<//>`;
  return html`<${Button} onTouch=${strike}>Strike this photo<//>`;
}
