/** A JSON document as it lies in a column. */
export type JsonText = string;

export const toJsonText = (document: unknown): JsonText => JSON.stringify(document);

export const fromJsonText = <T>(text: JsonText): T => JSON.parse(text) as T;
