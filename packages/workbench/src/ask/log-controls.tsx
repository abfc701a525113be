// What a person gives of a log: the file, readings by hand, the day it is of, and where columns hang that the file does not name.

import type { Wishes } from '../engine/protocol.ts';
import type { ControlsProps } from './answer.ts';
import { Choice, FileChoice } from './controls.tsx';

export function LogChoice(props: ControlsProps) {
  return (
    <>
      <FileChoice {...props} label="log" accept=".csv,.tsv,.txt" />
      <LogDay {...props} usual={props.look.cabinet.calibration?.day} />
      <Placing {...props} />
    </>
  );
}

export function ReadingsChoice(props: ControlsProps) {
  return (
    <>
      <FileChoice {...props} label="log" accept=".csv,.tsv,.txt" />
      <Lines {...props} label="readings by hand, one a line" of="readings" example="14:05 top 41 °C" />
      <LogDay {...props} />
      <Placing {...props} />
    </>
  );
}

function LogDay({ look, wishes, onWishes, usual }: ControlsProps & { readonly usual?: string | undefined }) {
  const days = Object.keys(look.cabinet.days);
  if (days.length < 2) return null;
  return (
    <Choice
      label="against the day"
      value={wishes.days?.[0] ?? usual ?? days[0]!}
      words={days}
      onChange={(day) => onWishes({ ...wishes, days: [day] })}
    />
  );
}

/** Seldom needed: only where the names of columns, or the clock, are not those of the file. */
function Placing(props: ControlsProps) {
  const { wishes, onWishes } = props;
  return (
    <details>
      <summary>columns and clock</summary>
      <div className="ask-controls">
        <Lines {...props} label="where columns hang, one a line" of="columns" example="Temp 1=top" />
        <label>
          shift its clock by{' '}
          <input
            type="text"
            size={8}
            placeholder="-30 min"
            value={wishes.shift ?? ''}
            onChange={({ currentTarget: { value } }) => {
              const { shift: _before, ...rest } = wishes;
              onWishes(value.trim() === '' ? rest : { ...wishes, shift: value });
            }}
          />
        </label>
      </div>
    </details>
  );
}

function Lines({
  label,
  of,
  example,
  wishes,
  onWishes,
}: ControlsProps & { readonly label: string; readonly of: 'readings' | 'columns'; readonly example: string }) {
  return (
    <label className="lines">
      {label}{' '}
      <textarea
        rows={2}
        placeholder={example}
        onInput={({ currentTarget: { value } }) => onWishes(withLines(wishes, of, value))}
      />
    </label>
  );
}

function withLines(wishes: Partial<Wishes>, of: 'readings' | 'columns', text: string): Partial<Wishes> {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return { ...wishes, [of]: lines };
}
