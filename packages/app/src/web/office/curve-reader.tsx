import { useState, type MouseEvent } from 'react';
import type { Draft } from '../part-form/part-draft.ts';
import { readCurve, type AxisPoint, type Place } from './read-curve.ts';

interface Picture {
  readonly address: string;
  readonly width: number;
  readonly height: number;
}

type Setting = 'first' | 'second' | 'curve';
const NOWHERE: AxisPoint = { place: undefined, flow: '', head: '' };

/** A pump's curve read off a picture: two points of its axes are named, then points of the curve are clicked. */
export function CurveReader(given: {
  readonly rows: readonly Draft[];
  readonly change: (rows: readonly Draft[]) => void;
}) {
  const [picture, setPicture] = useState<Picture>();
  const [setting, setSetting] = useState<Setting>('first');
  const [axes, setAxes] = useState({ first: NOWHERE, second: NOWHERE });
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [said, setSaid] = useState('');
  const put = (place: Place) => {
    setSaid('');
    if (setting === 'curve') return setPlaces([...places, place]);
    setAxes({ ...axes, [setting]: { ...axes[setting], place } });
    setSetting(setting === 'first' ? 'second' : 'curve');
  };
  const take = () => {
    const read = readCurve(axes.first, axes.second, places);
    if ('why' in read) return setSaid(read.why);
    given.change(read.points.map(({ flow, head }) => ({ flow, head })));
    setSaid(`${read.points.length} points stand in the fields above; they are kept with the part.`);
  };
  return (
    <details className="curve-reader">
      <summary>Read it off a picture of the curve</summary>
      <p>
        The picture stays on this page. Press two points whose flow and head the axes tell, best the corner
        and far from it; type their values; then press points along the curve. Without a pointer: type the
        points in the fields above.
      </p>
      <label>
        Picture{' '}
        <input
          type="file"
          accept="image/*"
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file !== undefined)
              void pictureOf(file).then(setPicture, () =>
                setSaid('This file is no picture that can be shown.'),
              );
          }}
        />
      </label>
      <div className="part-acts" role="group" aria-label="What the next press on the picture is">
        {(['first', 'second', 'curve'] as const).map((which) => (
          <label key={which}>
            <input
              type="radio"
              name="curve-setting"
              checked={setting === which}
              onChange={() => setSetting(which)}
            />{' '}
            {which === 'curve' ? 'points of the curve' : `${which} point of the axes`}
          </label>
        ))}
      </div>
      <Axis name="First" point={axes.first} change={(first) => setAxes({ ...axes, first })} />
      <Axis name="Second" point={axes.second} change={(second) => setAxes({ ...axes, second })} />
      {picture !== undefined && <Plot picture={picture} axes={axes} places={places} put={put} />}
      <p className="part-acts">
        <button
          type="button"
          className="part-button"
          disabled={places.length === 0}
          onClick={() => setPlaces(places.slice(0, -1))}
        >
          Take back the last point
        </button>
        <button type="button" className="part-button" onClick={take}>
          Put the curve into the fields
        </button>
      </p>
      <p role="status">{said}</p>
    </details>
  );
}

function Axis(given: {
  readonly name: string;
  readonly point: AxisPoint;
  readonly change: (point: AxisPoint) => void;
}) {
  const { name, point, change } = given;
  return (
    <p className="part-acts">
      <label>
        {name} point, flow{' '}
        <input
          value={point.flow}
          placeholder="0 gpm"
          onChange={(e) => change({ ...point, flow: e.target.value })}
        />
      </label>
      <label>
        {name} point, head{' '}
        <input
          value={point.head}
          placeholder="0 ft"
          onChange={(e) => change({ ...point, head: e.target.value })}
        />
      </label>
      <span>{point.place === undefined ? 'not pressed yet' : 'pressed'}</span>
    </p>
  );
}

function Plot(given: {
  readonly picture: Picture;
  readonly axes: Readonly<Record<'first' | 'second', AxisPoint>>;
  readonly places: readonly Place[];
  readonly put: (place: Place) => void;
}) {
  const { picture, axes, places, put } = given;
  const { width, height, address } = picture;
  const press = (event: MouseEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    put({
      x: ((event.clientX - box.left) / box.width) * width,
      y: ((event.clientY - box.top) / box.height) * height,
    });
  };
  const along = [...places].sort((a, b) => a.x - b.x);
  // Marks keep their size on the screen, however large the picture is.
  const unit = width / 600;
  return (
    <svg
      className="curve-plot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`The picture with ${places.length} points of the curve`}
      onClick={press}
    >
      <image href={address} width={width} height={height} />
      <polyline points={along.map(({ x, y }) => `${x},${y}`).join(' ')} strokeWidth={2.2 * unit} />
      {along.map(({ x, y }, i) => (
        <circle key={i} cx={x} cy={y} r={4 * unit} />
      ))}
      {[axes.first, axes.second].map(
        ({ place }, i) =>
          place !== undefined && (
            <path
              key={i}
              strokeWidth={1.8 * unit}
              d={`M${place.x - 9 * unit} ${place.y}h${18 * unit}M${place.x} ${place.y - 9 * unit}v${18 * unit}`}
            />
          ),
      )}
    </svg>
  );
}

/** Read into the page itself: nothing is sent anywhere. */
function pictureOf(file: File): Promise<Picture> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onerror = () => reject(new Error('the file cannot be read'));
    reader.onload = () => {
      const address = reader.result as string;
      const image = new Image();
      image.onerror = () => reject(new Error('the file is no picture'));
      image.onload = () => resolve({ address, width: image.naturalWidth, height: image.naturalHeight });
      image.src = address;
    };
    reader.readAsDataURL(file);
  });
}
