import { hrefOf } from '../stores/navigation.ts';
import { useWords } from '../words.ts';
import css from './sources-link.module.css';

const titles = { pins: 'help.push-pins', calls: 'help.read-calls' } as const;

/** The chapter of the guide for what is on screen. */
export function HelpLink({ chapter }: { chapter: keyof typeof titles }) {
  const { say } = useWords();
  return (
    <a className={css.link} href={hrefOf({ name: 'help', chapter })}>
      {say(titles[chapter])}
    </a>
  );
}
