/** A library over streams: items go a few ahead of their answers, and again where the service had no room or was lost. */

import { setTimeout as wait } from "node:timers/promises";

import type { ClientDuplexStream } from "@grpc/grpc-js";

import { FlushbackError, lateAt, lostAt, refused, toldByItem } from "./errors.js";

import type { CheckManyRequest } from "./contract/flushback/v1/CheckManyRequest.js";
import type { CheckManyResponseAnswer } from "./contract/flushback/v1/CheckManyResponse.js";
import type { CheckResponseAnswer } from "./contract/flushback/v1/CheckResponse.js";

/** What became of an item of a library: an answer or an error, exactly one of the two. */
export type Checked<Item> =
  | { /** The item, as it was given. */ item: Item; answer: CheckResponseAnswer; error?: never }
  | { item: Item; answer?: never; /** What a single call would have thrown. */ error: FlushbackError };

/** A stream of a library. */
export type LibraryStream = ClientDuplexStream<CheckManyRequest, CheckManyResponseAnswer>;

/** What is sent, and how. */
export interface Library<Item> {
  /** The items. */
  items: Iterable<Item> | AsyncIterable<Item>;
  /** Makes the request of an item. */
  toRequest: (item: Item) => Promise<CheckManyRequest>;
  /** Opens a stream. */
  open: () => LibraryStream;
  /** How long the next answer may take. */
  deadlineSeconds: number;
  /** Where the service is, for errors. */
  address: string;
}

const TRIES = 5;
const FIRST_PAUSE_MS = 100;
const LONGEST_PAUSE_MS = 2000;

// A service takes in so many items of a library before it has answered the first (Limits:StreamItems).
const ITEMS_AHEAD = 16;

interface Sent<Item> {
  item: Item;
  request: CheckManyRequest;
  tries: number;
  /** When it is to be sent again, by performance.now(); undefined while the service has it. */
  dueMs: number | undefined;
}

/** The answers to a library, as they are ready. */
export async function* answersTo<Item>(library: Library<Item>): AsyncGenerator<Checked<Item>, void, void> {
  const items = Symbol.asyncIterator in library.items ? library.items[Symbol.asyncIterator]() : library.items[Symbol.iterator]();
  const underWay = new UnderWay(library, items);
  let lostInARow = 0;
  try {
    while (true) {
      let error: FlushbackError;
      try {
        for await (const checked of underWay.overOneStream()) {
          lostInARow = 0;
          yield checked;
        }

        if (underWay.isOver) {
          return;
        }

        error = lostAt(library.address);
      } catch (fault) {
        error = refused(fault, library.address);
      }

      const blamed = ["RESOURCE_EXHAUSTED", "INVALID_ARGUMENT"].includes(error.code) ? underWay.takeFirst() : undefined;
      if (blamed !== undefined) {
        yield { item: blamed, error };
        continue;
      }

      // A service that stops may be seen as a connection that was cut.
      lostInARow += 1;
      if (!["UNAVAILABLE", "INTERNAL", "UNKNOWN", "CANCELLED"].includes(error.code) || lostInARow === TRIES) {
        throw error;
      }

      await wait(Math.min(FIRST_PAUSE_MS * 2 ** (lostInARow - 1), LONGEST_PAUSE_MS));
    }
  } finally {
    await items.return?.();
  }
}

/** The items that are not answered yet. */
class UnderWay<Item> {
  // By id, in the order sent.
  readonly #open = new Map<string, Sent<Item>>();
  readonly #library: Library<Item>;
  readonly #items: Iterator<Item> | AsyncIterator<Item>;
  #taken = 0;
  #isReadToEnd = false;

  constructor(library: Library<Item>, items: Iterator<Item> | AsyncIterator<Item>) {
    this.#library = library;
    this.#items = items;
  }

  get isOver(): boolean {
    return this.#isReadToEnd && this.#open.size === 0;
  }

  /** Takes out the first sent of those unanswered: where a stream is refused, it is to blame (the contract says). */
  takeFirst(): Item | undefined {
    for (const [id, sent] of this.#open) {
      if (sent.dueMs === undefined) {
        this.#open.delete(id);
        return sent.item;
      }
    }

    return undefined;
  }

  async *overOneStream(): AsyncGenerator<Checked<Item>, void, void> {
    const stream = this.#library.open();
    // What goes wrong is told by reading; what comes of cancelling is nobody's business.
    stream.on("error", () => {});
    const answers = stream[Symbol.asyncIterator]();
    try {
      for (const sent of this.#open.values()) {
        sent.dueMs = undefined;
        stream.write(sent.request);
      }

      while (true) {
        yield* this.#sendFurther(stream);
        if (this.#open.size === 0) {
          stream.end();
        }

        const answer = await this.#next(answers, stream);
        if (answer === undefined) {
          return;
        }

        const checked = this.#settle(answer);
        if (checked !== undefined) {
          yield checked;
        }
      }
    } finally {
      stream.cancel();
    }
  }

  async *#sendFurther(stream: LibraryStream): AsyncGenerator<Checked<Item>, void, void> {
    while (this.#open.size < ITEMS_AHEAD && !this.#isReadToEnd) {
      const { done, value: item } = await this.#items.next();
      if (done) {
        this.#isReadToEnd = true;
        return;
      }

      const itemId = `${this.#taken++}`;
      try {
        const request = { ...(await this.#library.toRequest(item)), itemId };
        this.#open.set(itemId, { item, request, tries: 0, dueMs: undefined });
        stream.write(request);
      } catch (fault) {
        if (!(fault instanceof FlushbackError)) {
          throw fault;
        }

        yield { item, error: fault };
      }
    }
  }

  /** The next answer; while it is waited for, items that are due are sent again. */
  async #next(
    answers: AsyncIterator<CheckManyResponseAnswer>,
    stream: LibraryStream,
  ): Promise<CheckManyResponseAnswer | undefined> {
    const untilMs = performance.now() + this.#library.deadlineSeconds * 1000;
    const coming = answers.next();
    coming.catch(() => {});
    while (true) {
      const nextMs = Math.min(untilMs, ...[...this.#open.values()].map((sent) => sent.dueMs ?? untilMs));
      const giveUp = new AbortController();
      const found = await Promise.race([
        coming,
        wait(Math.max(0, nextMs - performance.now()), undefined, { signal: giveUp.signal }),
      ]).finally(() => giveUp.abort());
      if (found !== undefined) {
        return found.done ? undefined : found.value;
      }

      if (performance.now() >= untilMs) {
        throw lateAt(this.#library.address);
      }

      this.#sendDue(stream);
    }
  }

  #sendDue(stream: LibraryStream): void {
    for (const [id, sent] of [...this.#open]) {
      if (sent.dueMs !== undefined && sent.dueMs <= performance.now()) {
        sent.dueMs = undefined;
        this.#open.delete(id);
        this.#open.set(id, sent);
        stream.write(sent.request);
      }
    }
  }

  #settle(answer: CheckManyResponseAnswer): Checked<Item> | undefined {
    const sent = this.#open.get(answer.itemId);
    if (sent === undefined) {
      return undefined;
    }

    const error = answer.error ? toldByItem(answer.error, this.#library.address) : undefined;
    sent.tries += 1;
    if (error?.code === "UNAVAILABLE" && error.retryAfterSeconds !== undefined && sent.tries < TRIES) {
      sent.dueMs = performance.now() + error.retryAfterSeconds * 1000;
      return undefined;
    }

    this.#open.delete(answer.itemId);
    return error === undefined ? { item: sent.item, answer: answer.check! } : { item: sent.item, error };
  }
}
