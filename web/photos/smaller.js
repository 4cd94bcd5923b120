// @ts-check
// A photo in the size that a notebook needs: upright, as JPEG, and nothing of what the camera wrote beside the picture, such
// as the place where it was taken. All of that is left behind because only the drawn picture is written again.
import { say } from "../words/words.js";

/** Pixels of the longer side: a pencil mark on a wall is still read, and the picture has about a third of a megabyte. */
const LONGEST = 1600;
const QUALITY = 0.8;

/** @param {Blob} file @returns {Promise<Blob>} rejects with a sentence for the person */
export async function smaller(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => {
    throw new Error(say("photo-unreadable"));
  });
  const shrunk = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * shrunk));
  canvas.height = Math.max(1, Math.round(picture.height * shrunk));
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error(say("photo-undrawn"));
  pen.fillStyle = "white"; // JPEG has no glass: what is seen through would turn black
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  /** @type {Blob | null} */
  const written = await new Promise((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
  canvas.width = 0; // Safari keeps a canvas's memory until it is small
  if (!written) throw new Error(say("photo-undrawn"));
  return written;
}
