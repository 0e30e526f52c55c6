import { dealAnswers } from './answers.mjs';
import { asPlayed } from './played.mjs';
import { Student } from './student.mjs';

/** The students of one class. What each answers is dealt when a round opens, for all who are there. */
export class SimulatedGroup {
  #url;
  #desk;
  #pace;
  #slipShare;
  #players;
  #students = [];
  #deals = new Map();

  /**
   * `pace`: seconds that an unhurried student takes · `slipShare`: how many slip, from 0 to 1 · `players`: names of those
   * who answer by playing.
   */
  constructor(url, desk, { pace, slipShare, players }) {
    this.#url = url;
    this.#desk = desk;
    this.#pace = pace;
    this.#slipShare = slipShare;
    this.#players = players;
  }

  async add(name) {
    const index = this.#students.length;
    const plays = this.#players.includes(name);
    const student = new Student((roundId) => void this.#answer(student, index, roundId, plays));
    this.#students.push(student);
    await student.join(this.#url, this.#desk.view.code, name);
  }

  /** Stands are not told what is right: the answer comes from what the Desk knows. */
  async #answer(student, index, roundId, plays) {
    const exercise = await this.#desk.exerciseOf(roundId);
    const answers = this.#deals.get(roundId) ?? this.#deal(roundId, exercise);
    // Who came in after the deal, or just in time, takes what is left.
    const answer = answers[index % answers.length];
    const hurry = ((index * 7 + answers.length) % 13) / 12;
    const given = answer && plays ? asPlayed(exercise, answer) : answer;
    if (given) student.answer(roundId, given, this.#pace * (0.15 + hurry));
  }

  #deal(roundId, exercise) {
    const { rounds } = this.#desk.view;
    const round = rounds.findIndex(({ id }) => id === roundId);
    const asked = JSON.stringify(exercise);
    const before = rounds.slice(0, round).filter((one) => JSON.stringify(one.exercise) === asked).length;
    // Asked again, after a word with the neighbour, fewer slip.
    const share = this.#slipShare / (1 + 2 * before);
    const answers = dealAnswers(exercise, this.#students.length, round, share);
    this.#deals.set(roundId, answers);
    return answers;
  }

  leave() {
    for (const student of this.#students) student.leave();
  }
}
