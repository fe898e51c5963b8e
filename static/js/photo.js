/* Makes a photograph small before it is sent: <input type="file" data-shrink>.
   Drawing it anew also drops the place it was taken at. If anything fails the file goes as it is. */

const LONGEST = 2000;
const QUALITY = 0.85;

export function sizeWithin(width, height, longest = LONGEST) {
  const scale = Math.min(1, longest / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

function asJpeg(canvas) {
  return new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", QUALITY));
}

/* A File of at most `longest` pixels a side, turned upright; the given file where that is not possible. */
export async function shrinkPhoto(file, longest = LONGEST) {
  if (!file.type.startsWith("image/")) return file;
  try {
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
    const canvas = Object.assign(document.createElement("canvas"), sizeWithin(picture.width, picture.height, longest));
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const blob = await asJpeg(canvas);
    if (!blob) return file;
    const name = file.name.replace(/\.[^.]*$/, "") + ".jpg";
    return new File([blob], name, { type: "image/jpeg", lastModified: file.lastModified });
  } catch {
    return file;
  }
}

async function shrinkChosen(input) {
  const chosen = [...input.files];
  const basket = new DataTransfer();
  for (const file of chosen) basket.items.add(await shrinkPhoto(file));
  // Another choice made meanwhile stands.
  if (chosen.some((file, index) => input.files[index] !== file)) return;
  input.files = basket.files;
  input.dispatchEvent(new CustomEvent("photo-ready", { bubbles: true, detail: { files: [...basket.files] } }));
}

document.addEventListener("change", (event) => {
  if (event.target.matches?.('input[type="file"][data-shrink]')) shrinkChosen(event.target);
});
