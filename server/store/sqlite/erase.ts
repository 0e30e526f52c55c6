import type { Database as Connection } from 'better-sqlite3';

/** How long to wait before erasing is tried again. Milliseconds. */
const again = 10_000;

/**
 * Makes what was deleted unreadable in every file of the store. `secure_delete` alone leaves the copies that SQLite
 * made when it moved rows from page to page, so the file is written anew, and the log is emptied.
 */
export class Eraser {
  readonly #connection: Connection;
  readonly #failed: (error: unknown) => void;
  #isWrittenAnew = true;
  #timer: NodeJS.Timeout | undefined;

  constructor(connection: Connection, failed: (error: unknown) => void) {
    this.#connection = connection;
    this.#failed = failed;
  }

  /** At once; where another program is reading or the disk is full, soon after that is over. */
  erase(): void {
    this.#isWrittenAnew = false;
    this.#keepTrying();
  }

  /** Tries once more what is still to do, and then no more. */
  close(): void {
    if (this.#timer) this.#tryOnce();
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  #keepTrying(): void {
    clearTimeout(this.#timer);
    this.#timer = this.#tryOnce() ? undefined : setTimeout(() => this.#keepTrying(), again).unref();
  }

  #tryOnce(): boolean {
    const wait = this.#connection.pragma('busy_timeout', { simple: true }) as number;
    // Answers must not wait for whoever is reading.
    this.#connection.pragma('busy_timeout = 0');
    try {
      // Once for each deletion: while somebody reads, every time would make the log longer by the whole store.
      if (!this.#isWrittenAnew) this.#connection.exec('vacuum');
      this.#isWrittenAnew = true;
      const [emptied] = this.#connection.pragma('wal_checkpoint(truncate)') as readonly { busy: number }[];
      return emptied?.busy === 0;
    } catch (error) {
      this.#failed(error);
      return false;
    } finally {
      this.#connection.pragma(`busy_timeout = ${String(wait)}`);
    }
  }
}
