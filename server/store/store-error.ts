/** Why the store can't be used or could not keep something, as one line for whoever runs the server. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
}
