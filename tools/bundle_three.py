"""Remake the vendored file of three.js: only what the view of a design in three dimensions uses, minified.

It needs node, npm and the network, once; to run tommybar nothing of this is
needed. The version stands below; the file and the licence text are written
into the page's static folder.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

VERSION = "0.187.0"
BUNDLER = "0.28.2"  # of esbuild
STATIC = Path(__file__).resolve().parents[1] / "src" / "tommybar" / "web" / "static"
USED = """
export {
  BufferAttribute, BufferGeometry, Color, DirectionalLight, EdgesGeometry, Group, HemisphereLight,
  LineBasicMaterial, LineSegments, Matrix4, Mesh, MeshLambertMaterial, OrthographicCamera, PerspectiveCamera,
  Raycaster, Scene, Spherical, Vector2, Vector3, WebGLRenderer,
} from "three";
export { OrbitControls } from "three/examples/jsm/controls/OrbitControls.js";
"""


def main() -> None:
    """Fetch, bundle, and write the two files."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "package.json").write_text("{}")
        packages = [f"three@{VERSION}", f"esbuild@{BUNDLER}"]
        subprocess.run(["npm", "install", "--no-audit", "--no-fund", *packages], cwd=folder, check=True)
        (folder / "used.mjs").write_text(USED)
        target = STATIC / f"three-{VERSION}.min.js"
        command = ["node_modules/.bin/esbuild", "used.mjs", "--bundle", "--minify", "--format=esm"]
        done = subprocess.run(
            [*command, "--legal-comments=none", "--charset=utf8"], cwd=folder, check=True, capture_output=True
        )
        head = f"// three.js {VERSION}, MIT licence (three-LICENSE.txt); made by tools/bundle_three.py\n"
        target.write_bytes(head.encode() + done.stdout)
        licence = (folder / "node_modules" / "three" / "LICENSE").read_text(encoding="utf-8")
        (STATIC / "three-LICENSE.txt").write_text(licence, encoding="utf-8")
        print(f"{target.name}: {target.stat().st_size // 1000} kB")


if __name__ == "__main__":
    sys.exit(main())
