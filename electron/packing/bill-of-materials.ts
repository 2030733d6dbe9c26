import { spawnSync } from 'node:child_process';
import { shippedPackages } from './packages.ts';

interface Bom {
  metadata: { component: { 'bom-ref': string; name: string } };
  components: { type: string; 'bom-ref': string; name: string; version: string; licenses?: unknown }[];
  dependencies: { ref: string; dependsOn: string[] }[];
}

/**
 * What people get, by npm's own list of what package.json depends on, without what only compiles native parts.
 *
 * @param platform  what runs it, which is packed with it: Node.js or Electron, both under the MIT license
 */
export function billOfMaterials(root: string, platform: { name: string; version: string }): Bom {
  const args = ['sbom', '--sbom-format=cyclonedx', '--sbom-type=application', '--package-lock-only'];
  const { stdout, stderr, status } = spawnSync('npm', args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error(`npm sbom: ${stderr}`);
  const whole: Bom = JSON.parse(stdout);
  const shipped = new Set(shippedPackages(root).map(({ name, version }) => `${name}@${version}`));
  const components = whole.components.filter(({ name, version }) => shipped.has(`${name}@${version}`));
  const own = whole.metadata.component['bom-ref'];
  const refs = new Set([own, ...components.map((each) => each['bom-ref'])]);
  const platformRef = `${platform.name}@${platform.version}`;
  const licenses = [{ license: { id: 'MIT' } }];
  return {
    ...whole,
    // npm names it after the folder that it is in.
    metadata: { ...whole.metadata, component: { ...whole.metadata.component, name: 'pintally' } },
    components: [...components, { type: 'platform', 'bom-ref': platformRef, ...platform, licenses }],
    dependencies: [
      ...whole.dependencies
        .filter(({ ref }) => refs.has(ref))
        .map(({ ref, dependsOn }) => ({
          ref,
          dependsOn: [...dependsOn.filter((each) => refs.has(each)), ...(ref === own ? [platformRef] : [])],
        })),
      { ref: platformRef, dependsOn: [] },
    ],
  };
}
