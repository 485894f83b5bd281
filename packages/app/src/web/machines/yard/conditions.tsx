import { ACCEPTANCE_EDITIONS } from '@spraywright/engine/physics';
import {
  display,
  displayParts,
  parseQuantity,
  type Dimension,
  type UnitSystem,
} from '@spraywright/engine/quantity';
import type { YardTest } from '@spraywright/engine/yard';
import { useState } from 'react';
import { rememberWho, whoIsHere } from '../kept-machine.ts';
import type { Conditions as Given } from './use-yard-test.ts';

interface ConditionsGiven {
  readonly test: YardTest | undefined;
  readonly windLimit: number;
  readonly units: UnitSystem;
  readonly onGive: (given: Given) => void;
}

/** Ordinary water, for the unit in which its temperature is typed [K]. */
const ORDINARY_WATER = 288.15;

/** What holds for the whole test: who reads, wind, water, and whose limits the tips are held against. */
export function YardConditions({ test, windLimit, units, onGive }: ConditionsGiven) {
  const [who, setWho] = useState(whoIsHere);
  const edition = ACCEPTANCE_EDITIONS.find((e) => e.id === test?.edition);
  return (
    <div className="conditions">
      <label>
        <span>Who reads</span>
        <input
          value={who}
          maxLength={60}
          autoComplete="name"
          onChange={(e) => {
            setWho(e.target.value);
            rememberWho(e.target.value.trim());
          }}
        />
      </label>
      <Measured
        key={`wind ${test?.id} ${test?.wind}`}
        label={`Wind at gun height; a tape is read up to ${display(windLimit, 'speed', units)}`}
        kept={test?.wind}
        dimension="speed"
        unit={displayParts(windLimit, 'speed', units).unit}
        onGive={(wind) => onGive({ wind })}
      />
      <Measured
        key={`water ${test?.id} ${test?.waterTemperature}`}
        label="Water temperature; the site's when left out"
        kept={test?.waterTemperature}
        dimension="temperature"
        unit={displayParts(ORDINARY_WATER, 'temperature', units).unit}
        onGive={(waterTemperature) => onGive({ waterTemperature })}
      />
      <label>
        <span>Limits of which place</span>
        <select value={test?.edition ?? ''} onChange={(e) => onGive({ edition: e.target.value })}>
          <option value="">none: only this rig's own windows</option>
          {ACCEPTANCE_EDITIONS.map(({ id, origin }) => (
            <option key={id} value={id}>
              {origin.place}, {origin.edition}
            </option>
          ))}
        </select>
      </label>
      {edition !== undefined && (
        <p className="note">
          {edition.origin.source}. Checked against the text in force: {edition.origin.checkedBy}. Whether a
          rig may be used is decided by the local rules and those who inspect by them.
        </p>
      )}
    </div>
  );
}

function Measured(given: {
  readonly label: string;
  readonly kept: string | undefined;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly onGive: (text: string) => void;
}) {
  const { label, kept, dimension, unit, onGive } = given;
  const [text, setText] = useState(kept ?? '');
  const typed = text.trim() === '' || /[a-z°]/i.test(text) ? text.trim() : `${text.trim()} ${unit}`;
  const read = typed === '' ? undefined : parseQuantity(typed, dimension);
  const give = () => {
    if (read?.ok !== false && typed !== (kept ?? '')) onGive(typed);
  };
  return (
    <label>
      <span>{label}</span>
      <input
        value={text}
        placeholder={unit}
        inputMode="decimal"
        aria-invalid={read?.ok === false}
        onChange={(e) => setText(e.target.value)}
        onBlur={give}
        onKeyDown={(e) => {
          if (e.key === 'Enter') give();
        }}
      />
      {read?.ok === false && <span className="problem">{read.message}</span>}
    </label>
  );
}
