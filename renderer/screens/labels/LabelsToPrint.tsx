import { useCallback, useState } from 'react';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Actions, Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { NumberField } from '../../parts/Field.tsx';
import { EmptyState, Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { useAnswer } from '../../useAnswer.ts';
import { LabelPreview, pagesOf } from './LabelPreview.tsx';
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
  const [skip, setSkip] = useState<number | null>(0);
  const layout = layouts[kind];
  return (
    <Sheet title="Paper">
      <PaperChoice kind={kind} layouts={layouts} onKind={setKind} />
      {kind === 'sheet' && (
        <NumberField
          label="Labels already used on the first sheet"
          hint={`Counted along the rows from the top left; this sheet has ${layout.columns * layout.rows}.`}
          value={skip}
          onValue={setSkip}
        />
      )}
      {boardIds.length === 0 ? (
        <EmptyState sentence="No board is chosen. Tick a call or a board, and its label shows here." />
      ) : (
        <Drawn boardIds={boardIds} layout={layout} skip={kind === 'sheet' ? (skip ?? 0) : 0} />
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
  return (
    <div className="paper-choice">
      <Choice
        label="Labels on"
        value={kind}
        options={[
          { value: 'sheet', label: `A sheet of ${sheet.columns} × ${sheet.rows}` },
          { value: 'single', label: `Single labels, ${single.labelWidthMm} × ${single.labelHeightMm} mm` },
        ]}
        onValue={onKind}
      />
      <a href={hrefOf({ name: 'settings' })}>Other sizes: Settings</a>
    </div>
  );
}

function Drawn({ boardIds, layout, skip }: { boardIds: number[]; layout: LabelLayout; skip: number }) {
  const contents = useAnswer('labels.contents', { boardIds });
  if (contents.error) return <Failed sentence={contents.error} again={contents.again} />;
  if (!contents.output) return <Loading what="the labels" />;
  return <Pages boardIds={boardIds} contents={contents.output} layout={layout} skip={skip} />;
}

function Pages({
  boardIds,
  contents,
  layout,
  skip,
}: {
  boardIds: number[];
  contents: readonly LabelContent[];
  layout: LabelLayout;
  skip: number;
}) {
  const [printing, setPrinting] = useState(false);
  const [making, setMaking] = useState(false);
  const printed = useCallback(() => setPrinting(false), []);
  const { pages, problem } = pagesOf(contents, layout, skip);
  const labels = contents.length === 1 ? 'One label' : `${contents.length} labels`;
  const sheets = pages.length === 1 ? 'one page' : `${pages.length} pages`;

  async function save(): Promise<void> {
    setMaking(true);
    const fileName = await attempt(savePdf({ boardIds, kind: layout.kind, skip }));
    setMaking(false);
    if (fileName) tellDone(`${fileName} is made: ${labels.toLowerCase()} on ${sheets}.`);
  }

  if (problem) return <Banner kind="problem">{problem}</Banner>;
  return (
    <>
      <p>
        <strong>
          {labels} on {sheets}.
        </strong>{' '}
        Print at 100 %, not fitted to the page.
      </p>
      <Actions>
        <Button kind="main" onClick={() => setPrinting(true)}>
          Print
        </Button>
        <Button disabled={making} onClick={save}>
          {making ? 'Making the PDF …' : 'Save as PDF'}
        </Button>
      </Actions>
      <LabelPreview pages={pages} layout={layout} skip={skip} />
      {printing && <PrintPages pages={pages} onDone={printed} />}
    </>
  );
}
