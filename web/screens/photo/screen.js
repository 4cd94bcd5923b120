// @ts-check
// One photo, as large as the screen: when it was taken, how far it has come, what is drawn and pinned on it, what it shows
// in words, and the way to strike it.
import { html, useMemo, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { sayAttachment, sayPin, strike, strikeAll, strikeOut } from "../../notebook/write.js";
import { markedOn } from "../../photos/marked.js";
import { wordsOf } from "../../photos/photos.js";
import { standingOf, usePicture } from "../../photos/picture.js";
import { photosIn } from "../../photos/taken.js";
import { say } from "../../words/words.js";
import { Figures, Pins, told } from "./pins.js";
import { PhotoSheet } from "./sheet.js";

/** Where a pin stands until a finger says otherwise. @type {import("../../photos/marked.js").Point} */
const MIDDLE = [5000, 5000];

/** @param {{place: string[]}} props the photo, and the place to go back to */
export function PhotoInHand({ place: [id, ...from] }) {
  const { entries } = useNotebook();
  const photo = useMemo(() => photosIn(entries).find((one) => one.id === id), [entries, id]);
  const back = from[0] ? from : ["survey"];
  if (!photo) {
    return html`<${Page} title=${say("photo-none.title")} tab=${back[0]}>
      <p>${say("photo-none")}</p>
      <p class="onward"><a href=${link(...back)}>${say("back")}</a></p>
    <//>`;
  }
  return html`<${Large} photo=${photo} back=${back} key=${id} />`;
}

/** @param {{photo: import("../../photos/taken.js").Photo, back: string[]}} props */
function Large({ photo, back }) {
  const notebook = useNotebook();
  const { entries, room } = notebook;
  const picture = usePicture(photo);
  const marked = useMemo(() => markedOn(entries, photo.id), [entries, photo.id]);
  const { answer } = useAnswer(photo.struck ? null : { ask: "photo", attachment: photo.id, room: room?.id });
  const pins = told(marked.pins, answer, notebook);
  const [mode, setMode] = useState(/** @type {"" | "draw" | "pin"} */ (""));
  const [moved, setMoved] = useState(/** @type {any} */ (null));
  const [spot, setSpot] = useState(MIDDLE);
  const [lit, setLit] = useState(/** @type {string | null} */ (null));
  const words = wordsOf(photo, notebook);
  const isSettled = Boolean(picture.url) || (picture.known && !picture.here);
  const put = (/** @type {any} */ pin) => {
    setMoved(pin);
    setSpot(pin ? [pin.x, pin.y] : MIDDLE);
    setMode("pin");
  };
  const shown = pins.filter((one) => !one.struck && one.id !== (mode === "pin" ? moved?.id : null));
  const is = { photo, words, picture, marked, answer, spot, moved, onDone: () => setMode("") };
  return html`<${Page} title=${words} aside=${standingOf(picture) || " "} tab=${back[0]} kind="photo">
    <${PhotoSheet} ...${is} pins=${shown} mode=${mode} lit=${lit} onSpot=${setSpot} />
    ${mode === "draw" ? html`<${Drawing} ...${is} />` : null}
    ${mode === "pin" ? html`<${Pinning} ...${is} />` : null}
    ${mode === "" && isSettled ? html`<${Looking} ...${is} pins=${pins} back=${back} onLit=${setLit} onDraw=${() => setMode("draw")} onPut=${put} />` : null}
  <//>`;
}

/** @param {any} props */
function Looking({ photo, words, picture, pins, back, onLit, onDraw, onPut }) {
  return html`${
    photo.struck
      ? html`<p class="stands">${say("photo-struck")}</p>`
      : html`<div class="side-by-side">
          <${Button} disabled=${!picture.url} onTouch=${onDraw}>${say("photo-draw")}<//>
          <${Button} disabled=${!picture.url} onTouch=${() => onPut(null)}>${say("pin")}<//>
        </div>
        <${Pins} pins=${pins} onLit=${onLit} onMove=${onPut} />
        <${Caption} photo=${photo} words=${words} key=${photo.name} />`
  }
    <div class="low last-row">
      <${Button} onTouch=${() => go(...back)}>${say("back")}<//>
      <${Strike} photo=${photo} words=${words} back=${back} />
    </div>`;
}

/** @param {any} props */
function Drawing({ marked, words: photo, onDone }) {
  const { journal, act } = useNotebook();
  const last = marked.strokes.at(-1);
  const takeBack = () => act(() => strike(journal, last.entry, "taken back"), say("photo-line-back.done", { photo }));
  const bringBack = () => act(() => strike(journal, marked.takenBack, "brought back"), say("photo-line-again.done", { photo }));
  return html`<p class="pencil">${say("photo-draw.told")}</p>
    <div class="low now">
      <div class="side-by-side">
        <${Button} disabled=${!last} onTouch=${takeBack}>${say("photo-line-back")}<//>
        ${marked.takenBack ? html`<${Button} onTouch=${bringBack}>${say("photo-line-again")}<//>` : null}
      </div>
      <${Button} kind="main" onTouch=${onDone}>${say("photo-draw.done")}<//>
    </div>`;
}

/** @param {any} props */
function Pinning({ photo, answer, spot: [x, y], moved, onDone }) {
  const { journal, act } = useNotebook();
  const put = async (/** @type {any} */ figure) => {
    const { of, what } = figure;
    const said = say(moved ? "pin-move.done" : "pin.done", { figure: figure.title });
    if (await act(() => sayPin(journal, photo.id, { id: moved?.id, of, what, x, y }), said)) onDone();
  };
  return html`<p>${moved ? say("pin-move.where", { figure: moved.title }) : say("pin.where")}</p>
    ${moved ? null : html`<${Figures} answer=${answer} onPick=${put} />`}
    <div class="low last-row">
      <${Button} onTouch=${onDone}>${say("pin.leave")}<//>
      ${moved ? html`<${Button} kind="main" onTouch=${() => put(moved)}>${say("pin-move.keep")}<//>` : null}
    </div>`;
}

/** @param {any} props */
function Caption({ photo, words }) {
  const { journal, act } = useNotebook();
  const [text, setText] = useState(photo.name);
  const { of, blob, size, type } = photo;
  const said = say("photo-caption.done", { photo: words });
  const keep = () => act(() => sayAttachment(journal, photo.id, { of, blob, size, type, name: text.trim() }), said);
  const same = text.trim() === photo.name;
  return html`<div class="setting">
    <${Field} label=${say("photo-caption")} value=${text} onInput=${setText} hint=""
      holds=${say("photo-caption.holds")} onEnter=${keep} />
    <${Button} label=${say("photo-caption.save")} disabled=${same} onTouch=${keep}>${say("save")}<//>
  </div>`;
}

/** @param {{photo: import("../../photos/taken.js").Photo, words: string, back: string[]}} props */
function Strike({ photo, words, back }) {
  const { journal, act } = useNotebook();
  const said = say("restore.text", { what: words });
  const restore = () => act(() => strikeAll(journal, photo.strikes, "restored by hand"), said);
  const away = async () => {
    const stays = stayHere();
    const done = async () => {
      await strikeOut(journal, "attachment", { attachment: photo.id }, "struck by hand");
      return true;
    };
    const struck = await act(done, say("strike.text", { what: words }));
    if (struck && stays()) go(...back);
  };
  if (photo.struck) return html`<${Button} onTouch=${restore}>${say("photo-restore")}<//>`;
  return html`<${Button} onTouch=${away}>${say("photo-strike")}<//>`;
}
