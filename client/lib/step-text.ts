/** "Chart 2 of 4". */
export function stepText({ number, of }: { readonly number: number; readonly of: number }): string {
  return `Chart ${String(number)} of ${String(of)}`;
}
