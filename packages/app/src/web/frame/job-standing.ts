/** How far a job has come, who is to act next, and since when. */
export interface JobStanding {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  readonly state: keyof typeof JOB_STATES;
  readonly since: string;
  readonly waitsFor: string;
  readonly to: string;
  readonly quote?: string;
  readonly serial?: string;
}

/** How far jobs come, in order, as people read it. */
export const JOB_STATES = {
  asked: 'Asked',
  'being-designed': 'Being designed',
  quoted: 'Quoted',
  accepted: 'Accepted',
  'being-built': 'Being built',
  tested: 'Tested',
  'handed-over': 'Handed over',
  declined: 'Declined',
  stopped: 'Stopped',
} as const;
