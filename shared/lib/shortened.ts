/** What a sentence quotes of a text of any length, by whole characters: `shortened('x'.repeat(99))` ends in "…". */
export function shortened(text: string): string {
  const characters = [...text.slice(0, 2 * most + 2)];
  return characters.length > most ? `${characters.slice(0, most).join('')}…` : text;
}

const most = 20;
