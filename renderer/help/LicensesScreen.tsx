import { later } from '../app/later.tsx';
import { Screen } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';

/** The texts are half a megabyte that hardly anybody reads: they come only when this screen is opened. */
const LicenseList = later(async () => (await import('./LicenseList.tsx')).LicenseList);

/** What Pintally contains of others, and under which licenses. */
export function LicensesScreen() {
  const { say } = useWords();
  return (
    <Screen title={say('licenses.title')} lead={say('licenses.lead')}>
      <LicenseList />
    </Screen>
  );
}
