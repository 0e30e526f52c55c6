import { failure, success, type Result } from '../../shared/lib/result.ts';
import { family, halfCapital, svgText } from './chart-svg.ts';

const dotsPerMm = 300 / 25.4;

/** The most that a canvas holds in the browsers of phones, in dots. */
const mostDots = 16_000_000;
const longestSide = 16_000;

const tooLarge = 'These charts make a picture too large for this browser. Save them as SVG or PDF.';

/**
 * Turns a picture in SVG, sized in millimetres, into one of dots, 300 to the inch. The words are set here: an image
 * doesn't say when the faces inside it are there.
 */
export async function chartPng(picture: SVGSVGElement): Promise<Result<Blob, string>> {
  const { width, height } = picture;
  const [across = 0, down = 0] = [width, height].map((side) =>
    Math.round(side.baseVal.valueInSpecifiedUnits * dotsPerMm),
  );
  if (across * down > mostDots || Math.max(across, down) > longestSide) return failure(tooLarge);
  const canvas = document.createElement('canvas');
  canvas.width = across;
  canvas.height = down;
  const context = canvas.getContext('2d');
  if (!context) return failure(tooLarge);
  try {
    context.drawImage(await withoutWords(picture, across, down), 0, 0);
    await facesLoaded(picture);
  } catch {
    return failure('This browser could not draw the picture. Save it as SVG or PDF.');
  }
  const dotsPerUnit = across / picture.viewBox.baseVal.width;
  context.scale(dotsPerUnit, dotsPerUnit);
  for (const text of picture.querySelectorAll('text')) setWords(context, text);
  const blob = await new Promise<Blob | null>((done) => {
    canvas.toBlob(done, 'image/png');
  });
  return blob ? success(blob) : failure(tooLarge);
}

async function withoutWords(
  picture: SVGSVGElement,
  width: number,
  height: number,
): Promise<HTMLImageElement> {
  const bare = picture.cloneNode(true) as SVGSVGElement;
  for (const text of bare.querySelectorAll('text')) text.remove();
  bare.setAttribute('width', String(width));
  bare.setAttribute('height', String(height));
  const image = new Image(width, height);
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(bare))}`;
  await image.decode();
  return image;
}

async function facesLoaded(picture: SVGSVGElement): Promise<void> {
  const weights = new Set([...picture.querySelectorAll('text')].map(weightOf));
  await Promise.all(
    [...weights].map((weight) => document.fonts.load(`${weight} 16px ${family}`, picture.textContent)),
  );
}

function weightOf(text: SVGTextElement): string {
  return text.closest('[font-weight]')?.getAttribute('font-weight') ?? '400';
}

function setWords(context: CanvasRenderingContext2D, text: SVGTextElement): void {
  const read = (name: string) => Number(text.getAttribute(name));
  const size = read('font-size');
  let [x, y] = [read('x'), read('y') + halfCapital * size];
  for (let around = text.parentElement; around; around = around.parentElement) {
    const [, right = 0, down = 0] = (around.getAttribute('transform') ?? '').split(/[( )]/).map(Number);
    x += right;
    y += down;
  }
  context.font = `${weightOf(text)} ${String(size)}px ${family}`;
  context.fillStyle = text.getAttribute('fill') ?? '#000';
  const anchor = text.getAttribute('text-anchor');
  context.textAlign = anchor === 'middle' ? 'center' : anchor === 'end' ? 'end' : 'start';
  context.fillText(text.textContent, x, y);
}
