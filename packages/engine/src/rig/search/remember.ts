/** Answers kept of one question; beyond them all are forgotten, since a long search asks for more than memory holds. */
const MOST = 20_000;

/** Keeps an answer that only saves reckoning it again; of large ones fewer. */
export function remember<K, V>(known: Map<K, V>, key: K, answer: V, most = MOST): V {
  if (known.size >= most) known.clear();
  known.set(key, answer);
  return answer;
}
