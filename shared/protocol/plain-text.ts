/** Control characters, halves of characters, private ones; and two blanks that count as letter and sign. */
const unwritten = /[\p{Cc}\p{Cs}\p{Co}\p{Cn}\u115F\u1160\u2800\u3164\uFFA0]/gu;

/**
 * What can't be seen, direction marks among it. Joiners stay where a script or a joined picture needs them, and the
 * mark that makes a sign a picture stays behind its sign.
 */
const unseen =
  /(?!(?<=[\p{L}\p{M}])[\u200C\u200D](?=\p{L})|(?<=[\p{Extended_Pictographic}\p{Emoji_Modifier}\uFE0F])\u200D(?=\p{Extended_Pictographic})|(?<=[\p{Emoji}])\uFE0F)[\p{Cf}\p{Default_Ignorable_Code_Point}]/gu;

/** More marks than this on one letter would run over the lines around it. */
const manyMarks = /(\p{M}{4})\p{M}+/gu;

/**
 * Text as one harmless line: what can't be seen is left out, blanks are single, letters composed.
 * `plainText('Ka\u202Eya \n')` is "Kaya".
 */
export function plainText(typed: string): string {
  return typed
    .normalize('NFC')
    .replace(unwritten, ' ')
    .replace(unseen, '')
    .replace(manyMarks, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}
