import licenses from 'virtual:licenses';
import type { LicensedPackage } from '../../shared-core/licensed-package.ts';
import { useSearchField } from '../form/useSearchField.tsx';
import { Sheet } from '../ui/Screen.tsx';
import { Unfold } from '../ui/Unfold.tsx';
import { useWords } from '../words.ts';
import css from './licenses.module.css';

/** Each package with its version, its license, and that license's text. */
export function LicenseList() {
  const { say } = useWords();
  const [typedText, searchField] = useSearchField({
    label: say('licenses.find'),
    hint: say('licenses.find-hint'),
  });
  const words = typedText.toLowerCase();
  const found = licenses.filter(({ name, license }) => `${name} ${license}`.toLowerCase().includes(words));
  return (
    <Sheet>
      {searchField}
      <p role="status" className="soft">
        {say('licenses.found', { found: found.length, typedText })}
      </p>
      <ul className={css.packages}>
        {found.map((each) => (
          <Package key={`${each.name} ${each.version}`} of={each} />
        ))}
      </ul>
      <p className="soft">{say('licenses.electron')}</p>
    </Sheet>
  );
}

function Package({ of: { name, version, license, text, isTextOwn } }: { of: LicensedPackage }) {
  const { say } = useWords();
  return (
    <li>
      <h2 translate="no">
        {name} {version}
      </h2>
      <p translate={license === null ? undefined : 'no'}>{license ?? say('licenses.by-text')}</p>
      <Unfold words={say('licenses.text')}>
        {!isTextOwn && <p className="soft">{say('licenses.standard-text')}</p>}
        <p className={css.text} lang="en" translate="no">
          {text}
        </p>
      </Unfold>
    </li>
  );
}
