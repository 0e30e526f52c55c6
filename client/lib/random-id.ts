/**
 * An id that nobody can guess: 128 random bits as 22 letters, digits, `-` and `_`.
 * Not `crypto.randomUUID`: on plain HTTP by address, as on a school's phones, it doesn't exist.
 */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
}
