import { useCallback, useState } from 'react';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import { type LabelLayout, problemOfUsed } from '../../../shared-core/labels/sheet.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { NumberField } from '../../form/Field.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading, Sheet } from '../../ui/Screen.tsx';
import { region, useWords } from '../../words.ts';
import { LabelPreview } from './LabelPreview.tsx';
import { PrintPages } from './PrintPages.tsx';
import { savePdf } from './save-pdf.ts';

type LayoutKind = LabelLayout['kind'];

/** The paper that the chosen boards' labels go on, and the ways to get them there. */
export function LabelsToPrint({
  boardIds,
  layouts,
}: {
  boardIds: number[];
  layouts: Settings['labelLayouts'];
}) {
  const [kind, setKind] = useState<LayoutKind>('sheet');
  const [typed, setTyped] = useState<number | null>(0);
  const { say } = useWords();
  const layout = layouts[kind];
  const used = kind === 'sheet' ? (typed ?? 0) : 0;
  const problem = problemOfUsed(used, layout);
  return (
    <Sheet title={say('labels.paper')}>
      <PaperChoice kind={kind} layouts={layouts} onKind={setKind} />
      {kind === 'sheet' && (
        <NumberField
          label={say('labels.used')}
          hint={say('labels.used-hint', { labels: layout.columns * layout.rows })}
          error={problem && say(problem)}
          value={typed}
          onValue={setTyped}
        />
      )}
      {boardIds.length === 0 ? (
        <EmptyState sentence={say('labels.none-chosen')} />
      ) : (
        problem === null && <Drawn boardIds={boardIds} layout={layout} used={used} />
      )}
    </Sheet>
  );
}

function PaperChoice({
  kind,
  layouts: { sheet, single },
  onKind,
}: {
  kind: LayoutKind;
  layouts: Settings['labelLayouts'];
  onKind: (kind: LayoutKind) => void;
}) {
  const { say } = useWords();
  const { labelWidthMm: widthMm, labelHeightMm: heightMm } = single;
  return (
    <div className="paper-choice">
      <Choice
        label={say('labels.print-on')}
        value={kind}
        options={[
          { value: 'sheet', label: say('labels.sheets', { columns: sheet.columns, rows: sheet.rows }) },
          { value: 'single', label: say('labels.singles', { widthMm, heightMm }) },
        ]}
        onValue={onKind}
      />
      <a href={hrefOf({ name: 'settings' })}>{say('labels.other-sizes')}</a>
    </div>
  );
}

function Drawn({ boardIds, layout, used }: { boardIds: number[]; layout: LabelLayout; used: number }) {
  const contents = useQuery('labels.contents', { boardIds });
  if (contents.error) return <Failed sentence={contents.error} again={contents.again} />;
  if (!contents.output) return <Loading />;
  return <Pages boardIds={boardIds} contents={contents.output} layout={layout} used={used} />;
}

function Pages({
  boardIds,
  contents,
  layout,
  used,
}: {
  boardIds: number[];
  contents: readonly LabelContent[];
  layout: LabelLayout;
  used: number;
}) {
  const [printing, setPrinting] = useState(false);
  const [making, setMaking] = useState(false);
  const printed = useCallback(() => setPrinting(false), []);
  const words = useWords();
  const { say } = words;
  const pages = drawLabels(contents, layout, words, used);
  const amount = { labels: contents.length, pages: pages.length };

  async function save(): Promise<void> {
    setMaking(true);
    const fileName = await attempt(savePdf({ boardIds, kind: layout.kind, used, region: region() }));
    setMaking(false);
    if (fileName) tellDone(say('labels.pdf-made', { fileName, ...amount }));
  }

  return (
    <>
      <p>
        <strong>{say('labels.amount', amount)}</strong> {say('labels.actual-size')}
      </p>
      <Actions>
        <Button kind="main" onClick={() => setPrinting(true)}>
          {say('common.print')}
        </Button>
        <Button disabled={making} onClick={save}>
          {say(making ? 'labels.making-pdf' : 'labels.save-as-pdf')}
        </Button>
      </Actions>
      <LabelPreview pages={pages} layout={layout} used={used} />
      {printing && <PrintPages pages={pages} onDone={printed} />}
    </>
  );
}
