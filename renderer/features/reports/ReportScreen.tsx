import { useMemo, useState } from 'react';
import {
  boardReportKindSchema,
  MOST_OF_PRICE,
  type Report,
  type ReportContent,
  type ReportKind,
  stackReportKindSchema,
} from '../../../shared-core/contract/report.ts';
import { type Paper, paperSchema, usualPaper } from '../../../shared-core/drawing/paper.ts';
import { shapedPages, textsOfPages } from '../../../shared-core/drawing/shaped-pages.ts';
import { noShapes } from '../../../shared-core/drawing/shapes.ts';
import { drawReport, reportName } from '../../../shared-core/reports/draw-report.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useEach, useQuery } from '../../data/useQuery.ts';
import { useSettled } from '../../data/useSettled.ts';
import { Choice } from '../../form/Choice.tsx';
import { TextField } from '../../form/Field.tsx';
import { region } from '../../region.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { Await } from '../../ui/Await.tsx';
import { Screen, Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { usePaperWords, useWords } from '../../words.ts';
import { MissingSigns } from '../labels/MissingSigns.tsx';
import { useBeforePaper } from '../printing/BeforePaper.tsx';
import { PrinterChoice } from '../printing/PrinterChoice.tsx';
import printingCss from '../printing/printing.module.css';
import { PagesPreview } from './PagesPreview.tsx';
import { ReportActions } from './ReportActions.tsx';

/** A report of a board or a stack as it will be on paper: looked over, printed or saved. */
export function ReportScreen({
  kind: first,
  id,
  more = noMore,
}: {
  kind: ReportKind;
  id: number;
  more?: number[];
}) {
  const [kind, setKind] = useState(first);
  const [paper, setPaper] = useState<Paper>(() => usualPaper(region().locale));
  const [sale, setSale] = useState<TypedSale>({ soldTo: null, priceText: '' });
  const asked = { kind, id, more: kind === 'buyer' ? more : noMore };
  const content = useQuery('reports.content', asked);
  const onPaper = usePaperWords();
  const words = useWords();
  const { say } = words;
  const work = useLongWork();
  const printing = useLongWork();
  const isOfStack = stackReportKindSchema.safeParse(kind).success;
  const beforePaper = useBeforePaper(isOfStack ? id : null);
  const drawn = useMemo(
    () => (content.output ? drawReport(withSale(content.output, sale), paper, onPaper) : []),
    [content.output, sale, paper, onPaper],
  );
  const texts = useMemo(() => textsOfPages(drawn), [drawn]);
  const [shaping] = useEach('labels.shapes', texts.length > 0 ? [{ texts }] : []);
  const shapes = shaping?.output ?? noShapes;
  const shaped = useMemo(() => shapedPages(drawn, shapes), [drawn, shapes]);
  const pages = useSettled(shaped, !(shaping?.loading ?? false));
  const kinds = kindsWith(kind, more);
  return (
    <Screen
      title={
        content.output
          ? say('report.screen-title', { name: reportName(content.output, words) })
          : say('report.print')
      }
      lead={pages.length > 0 && say('report.lead', { pages: pages.length })}
      actions={
        <ReportActions
          report={{ ...asked, ...trimmed(sale) }}
          paper={paper}
          pages={pages}
          work={work}
          printing={printing}
          beforePaper={beforePaper}
        />
      }
    >
      {beforePaper.note}
      {work.underWay && (
        <WorkUnderWay label={say('report.making-pdf')} {...work.underWay} onCancel={work.cancel} />
      )}
      {printing.underWay && (
        <WorkUnderWay label={say('print.under-way')} {...printing.underWay} onCancel={printing.cancel} />
      )}
      <div className={printingCss.columns}>
        <Sheet>
          {kinds.length > 1 && (
            <Choice
              label={say('report.which')}
              value={kind}
              options={kinds.map((each) => ({ value: each as string, label: say(`report.kind.${each}`) }))}
              onValue={(chosen) => setKind(chosen as ReportKind)}
            />
          )}
          {isForBuyer(kind) && <ForBuyer sale={sale} soldTo={soldToOf(content.output)} onSale={setSale} />}
          <Choice
            label={say('report.paper')}
            value={paper as string}
            options={paperSchema.options.map((each) => ({
              value: each as string,
              label: say(`report.paper.${each}`),
            }))}
            onValue={(chosen) => setPaper(chosen as Paper)}
          />
          <PrinterChoice paper={paper} />
          <p>
            <a href={hrefOf({ name: 'check' })}>{say('report.check-link')}</a>
          </p>
        </Sheet>
        <Sheet title={say('report.preview')}>
          <MissingSigns signs={shapes.missing} />
          <Await of={[content]}>{({ kind: shown }) => <PagesPreview key={shown} pages={pages} />}</Await>
        </Sheet>
      </div>
    </Screen>
  );
}

const noMore: number[] = [];
const isForBuyer = (kind: ReportKind) => kind === 'buyer' || kind === 'buyer-list';

/** Other reports of the same board, stack or boards. */
function kindsWith(kind: ReportKind, more: readonly number[]): readonly ReportKind[] {
  if (more.length > 0) return [kind];
  const isOfBoard = boardReportKindSchema.safeParse(kind).success;
  return isOfBoard ? boardReportKindSchema.options : stackReportKindSchema.options;
}

type Sale = Pick<Report, 'soldTo' | 'priceText'>;
/** As it is typed; null: the sale of the boards says to whom. */
type TypedSale = Omit<Sale, 'soldTo'> & { soldTo: string | null };
const trimmed = ({ soldTo, priceText }: TypedSale): Sale => ({
  soldTo: (soldTo ?? '').trim(),
  priceText: priceText.trim(),
});

/** With what is typed, before the machine knows of it. */
function withSale(content: ReportContent, sale: TypedSale): ReportContent {
  if (!('soldTo' in content)) return content;
  const { soldTo, priceText } = trimmed(sale);
  return { ...content, priceText, soldTo: soldTo === '' ? content.soldTo : soldTo };
}

/** To whom the boards were sold, as was said when they were; blank where nobody did. */
const soldToOf = (content: ReportContent | null): string =>
  content !== null && 'soldTo' in content ? content.soldTo : '';

/** Who sells to whom, for how much. */
function ForBuyer({
  sale,
  soldTo,
  onSale,
}: {
  sale: TypedSale;
  soldTo: string;
  onSale: (sale: TypedSale) => void;
}) {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  const [name, setName] = useState<string | null>(null);
  const save = () => {
    if (name !== null && name.trim() !== settings.nameOnPaper)
      void attempt(saveSettings({ ...settings, nameOnPaper: name.trim() }));
    setName(null);
  };
  return (
    <>
      <TextField
        label={say('report.yard-name')}
        hint={say('report.yard-name-hint')}
        maxLength={80}
        value={name ?? settings.nameOnPaper}
        onValue={setName}
        onBlur={save}
      />
      <TextField
        label={say('report.sold-to')}
        hint={say('report.sold-to-hint')}
        maxLength={200}
        value={sale.soldTo ?? soldTo}
        onValue={(soldTo) => onSale({ ...sale, soldTo })}
        // Where nothing is typed, the name of the sale is printed: it is shown again.
        onBlur={() => sale.soldTo?.trim() === '' && onSale({ ...sale, soldTo: null })}
      />
      <TextField
        label={say('report.price')}
        hint={say('report.price-hint')}
        maxLength={MOST_OF_PRICE}
        value={sale.priceText}
        onValue={(priceText) => onSale({ ...sale, priceText })}
      />
    </>
  );
}
