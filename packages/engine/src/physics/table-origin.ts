/** Where a table or a rule comes from, so that a person can judge and renew it. */
export interface TableOrigin {
  /** Where it applies. */
  readonly place: string;
  readonly edition: string;
  /** Date of the edition or of its effect, 'unknown' when the copy that was read does not say. */
  readonly date: string;
  readonly source: string;
  /** 'seen': read in a stored copy; 'memory': nobody could read it; 'part seen': the note says which part. */
  readonly evidence: 'seen' | 'memory' | 'part seen';
  /** Who compared it with the rule in force. */
  readonly checkedBy: string;
  readonly note?: string;
}

/** What every table of this folder starts with: nobody has yet compared it with the text in force. */
export const NOT_CHECKED = 'nobody yet against the text in force';
