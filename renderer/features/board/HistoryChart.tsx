import { useState } from 'react';
import { mcAxis, timeAxis } from '../../../shared-core/drawing/chart/axes.ts';
import { timeTicks } from '../../../shared-core/drawing/chart/time-ticks.ts';
import { type History, historyLayers } from '../../../shared-core/history-chart/history-layers.ts';
import { historySummary } from '../../../shared-core/history-chart/history-summary.ts';
import { spanOf } from '../../../shared-core/history-chart/span.ts';
import { Chart } from '../../chart/Chart.tsx';
import { Choice } from '../../form/Choice.tsx';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';

/** More places than this are compared in the table alone. */
const MOST_PLACES = 6;
/** The curves are read out at about so many days. */
const STOPS = 16;

/** What a board was and will likely be, on one line of time: its rounds, its places, the forecast and the target. */
export function HistoryChart({ code, history }: { code: string; history: History }) {
  const words = useWords();
  const { say } = words;
  const [isWhole, setWhole] = useState(false);
  const [placeId, setPlaceId] = useState<number | null>(null);
  const { findings, endUse, forecast } = history;
  const index = Math.max(0, forecast?.places.findIndex((place) => place.placeId === placeId) ?? 0);
  const { fromMs, toMs } = spanOf(history, index, isWhole);
  const x = timeAxis(fromMs, toMs, words);
  return (
    <Sheet
      title={say('history.title')}
      actions={
        forecast &&
        findings.length > 0 && (
          <Button onClick={() => setWhole(!isWhole)}>
            {isWhole ? say('history.from-last') : say('history.whole', { rounds: findings.length - 1 })}
          </Button>
        )
      }
    >
      {forecast && forecast.places.length > 1 && (
        <Choice
          label={<span className="spoken-only">{say('forecast.if-moved-to')}</span>}
          value={String(forecast.places[index]!.placeId)}
          options={forecast.places.slice(0, MOST_PLACES).map(({ placeId: id, name }, at) => ({
            value: String(id),
            label: at === 0 ? say('forecast.stays') : name,
            isName: at > 0,
          }))}
          onValue={(id) => setPlaceId(Number(id))}
        />
      )}
      <Chart
        title={
          forecast
            ? say('forecast.chart', { boardCode: code, placeName: forecast.places[index]!.name })
            : say('history.chart', { boardCode: code })
        }
        summary={historySummary(findings, endUse, forecast && { details: forecast, index }, words)}
        x={x}
        y={mcAxis(say('chart.mc'), words)}
        stops={forecast ? timeTicks(x.from, x.to, STOPS) : []}
        layers={historyLayers(history, index, x.from, words)}
      />
    </Sheet>
  );
}
