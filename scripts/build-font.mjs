// Draws the signs that neither of our faces holds (♭ ♮ ♯, and a zero as sturdy as Besley's other figures)
// and writes client/styles/fonts/rootcall-signs.otf. The result is committed; run this after changing a measure.
import { writeFileSync } from 'node:fs';

// opentype.js stamps the present moment into the file; a fixed one keeps it the same byte for byte.
const Clock = Date;
globalThis.Date = class extends Clock {
  constructor(...when) {
    super(...(when.length > 0 ? when : [0]));
  }
};

const { Font, Glyph, Path } = (await import('opentype.js')).default;

/** Units per em; capitals of both text faces are close to 668 of them. */
const em = 1000;

/** Outer contours run counter-clockwise, counters clockwise: the filling rule then leaves the counter open. */
function polygon(path, points) {
  points.forEach(([x, y], index) => (index === 0 ? path.moveTo(x, y) : path.lineTo(x, y)));
  path.close();
}

function upright(path, x, low, high, width) {
  polygon(path, [
    [x, low],
    [x + width, low],
    [x + width, high],
    [x, high],
  ]);
}

/** A slanted beam: `low` is the lower edge at its left end. */
function beam(path, x, low, { long, thick, rise }) {
  polygon(path, [
    [x, low],
    [x + long, low + rise],
    [x + long, low + rise + thick],
    [x, low + thick],
  ]);
}

/** Four cubic arcs; 0.5523 is the usual handle length for a quarter of a circle. */
function ellipse(path, cx, cy, rx, ry, clockwise) {
  const s = clockwise ? -1 : 1;
  const k = 0.5523;
  path.moveTo(cx + rx, cy);
  path.curveTo(cx + rx, cy + s * k * ry, cx + k * rx, cy + s * ry, cx, cy + s * ry);
  path.curveTo(cx - k * rx, cy + s * ry, cx - rx, cy + s * k * ry, cx - rx, cy);
  path.curveTo(cx - rx, cy - s * k * ry, cx - k * rx, cy - s * ry, cx, cy - s * ry);
  path.curveTo(cx + k * rx, cy - s * ry, cx + rx, cy - s * k * ry, cx + rx, cy);
  path.close();
}

function sharp() {
  const path = new Path();
  const measures = { long: 354, thick: 112, rise: 92 };
  upright(path, 118, -70, 690, 44);
  upright(path, 268, -30, 730, 44);
  // Both beams lie evenly about the middle of the uprights, with 150 between them.
  beam(path, 38, 97, measures);
  beam(path, 38, 359, measures);
  return path;
}

function natural() {
  const path = new Path();
  const measures = { long: 248, thick: 108, rise: 72 };
  upright(path, 60, 104, 750, 44);
  upright(path, 264, -90, 556, 44);
  beam(path, 60, 104, measures);
  beam(path, 60, 376, measures);
  return path;
}

function flat() {
  const path = new Path();
  upright(path, 54, 0, 790, 44);
  path.moveTo(54, 0);
  path.lineTo(90, 0);
  path.curveTo(226, 78, 352, 168, 352, 284);
  path.curveTo(352, 350, 312, 390, 246, 390);
  path.curveTo(184, 390, 130, 356, 98, 306);
  path.lineTo(54, 306);
  path.close();
  path.moveTo(98, 248);
  path.curveTo(128, 298, 164, 326, 198, 326);
  path.curveTo(234, 326, 250, 300, 250, 262);
  path.curveTo(250, 196, 184, 122, 98, 62);
  path.close();
  return path;
}

function zero() {
  const path = new Path();
  ellipse(path, 305, 375, 258, 386, false);
  ellipse(path, 305, 375, 140, 340, true);
  return path;
}

const font = new Font({
  familyName: 'Rootcall Signs',
  styleName: 'Regular',
  unitsPerEm: em,
  ascender: 984,
  descender: -272,
  createdTimestamp: 1,
  glyphs: [
    new Glyph({ name: '.notdef', advanceWidth: 500, path: new Path() }),
    new Glyph({ name: 'zero', unicode: 0x30, advanceWidth: 610, path: zero() }),
    new Glyph({ name: 'flat', unicode: 0x266d, advanceWidth: 384, path: flat() }),
    new Glyph({ name: 'natural', unicode: 0x266e, advanceWidth: 368, path: natural() }),
    new Glyph({ name: 'sharp', unicode: 0x266f, advanceWidth: 430, path: sharp() }),
  ],
});

const target = new URL('../client/styles/fonts/rootcall-signs.otf', import.meta.url);
writeFileSync(target, Buffer.from(font.toArrayBuffer()));
