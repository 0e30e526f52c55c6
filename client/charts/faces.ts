import textFace from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2?url';
import signsFace from '../styles/fonts/rootcall-signs.otf?url';

/** A style sheet with our faces inside, for pictures that leave this page; empty where they can't be had now. */
export async function embeddedFaces(): Promise<string> {
  try {
    const [text, signs] = await Promise.all([embedded(textFace), embedded(signsFace)]);
    return [
      face(`src: url("${text}") format("woff2");`),
      face(`src: url("${signs}") format("opentype"); unicode-range: U+266D-266F;`),
    ].join('\n');
  } catch {
    return '';
  }
}

function face(source: string): string {
  return `@font-face { font-family: "Rootcall Text"; font-weight: 200 900; ${source} }`;
}

async function embedded(address: string): Promise<string> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`no face at ${address}`);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  const type = address.endsWith('.otf') ? 'font/otf' : 'font/woff2';
  return `data:${type};base64,${btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))}`;
}
