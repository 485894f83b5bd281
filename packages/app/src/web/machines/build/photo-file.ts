/** Longest side of a photo that is kept, px, and what it may weigh as text. */
const SIDE = 960;
const LARGEST = 110_000;
const LARGEST_FILE = 30_000_000;

/**
 * A photo made small enough to be kept with a machine, as a data address.
 *
 * @throws Error that says why it cannot be
 */
export async function smallPhoto(file: File): Promise<string> {
  if (file.size > LARGEST_FILE)
    throw new Error(`the file has ${(file.size / 1e6).toFixed(0)} MB; at most ${LARGEST_FILE / 1e6} MB`);
  const picture = await createImageBitmap(file).catch(() => undefined);
  if (picture === undefined)
    throw new Error(`'${file.name}' is no picture that this browser can read; take it as JPEG or PNG`);
  for (let side = SIDE; side >= 320; side = Math.round(side * 0.75)) {
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height);
    for (const quality of [0.75, 0.6, 0.45]) {
      const address = canvas.toDataURL('image/jpeg', quality);
      if (address.length <= LARGEST) return address;
    }
  }
  throw new Error(`'${file.name}' stays larger than ${LARGEST / 1000} KB however it is made smaller`);
}
