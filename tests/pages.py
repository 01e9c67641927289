# SPDX-License-Identifier: MIT
"""Opens every page that `faywright report` writes in Chromium, prints it, and holds it against what a reader needs of it.

    pages.py PROGRAM ROOT BUILD [--approve]    the pages of the joints below; --approve takes over their pictures as good
    pages.py --self-test                       spoils a good page in every way known and sees each fault found

A fault is a pair: its kind, one word that the self-test asks for, and words for a person."""
import base64
import collections
import concurrent.futures
import csv
import dataclasses
import html
import io
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unicodedata

import markdown_it
from PIL import Image, ImageChops, ImageFilter, ImageStat
from selenium import webdriver
from selenium.webdriver.chrome.service import Service

HERE = pathlib.Path(__file__).resolve().parent / "pages"

# What is wanted of a page: its sheets of paper (None: any number), and which of the words of a verdict is read first on it (None: no matter).
Sheet = collections.namedtuple("Sheet", "pages verdict")
VERDICTS = [["not to be built", "pass", "fail"], ["accept", "ask", "refuse"]]  # on a joint, on an offer
GOOD = {"calculation.html": Sheet(None, "pass"), "shop-sheet.html": Sheet(1, None), "care-sheet.html": Sheet(1, None)}
SHEETS = {name: sheet for name, sheet in GOOD.items() if "sheet" in name}
LONG = {name: sheet._replace(pages=None) for name, sheet in GOOD.items()}  # with names that no sheet has room for
BAD = {"calculation.html": Sheet(None, "fail"), "shop-sheet.html": Sheet(1, "not to be built"), "care-sheet.html": Sheet(1, None)}


@dataclasses.dataclass
class Case:
    name: str
    joint: str
    options: list
    status: int
    pages: dict
    edits: dict = dataclasses.field(default_factory=dict)  # of the joint file: what is there, what is put in its place
    literal: list = dataclasses.field(default_factory=list)  # to be read as it stands: the first on every page, all in the calculation
    pictures: bool = True  # page 1 is compared with the approved picture
    again: bool = False  # a calculation of the same kind as another's: axe, which takes seconds for it, does not read it again


# Text of a joint file that would like to be markup of each kind: HTML, SVG, Markdown, a spreadsheet's formula.
TITLE = '<script>alert(1)</script> "&]]>'
NAMES = ["a|b `c` \"d\" ](javascript:alert(1)) <img src=x onerror=alert(1)>", "=1+1 'e' | *f* _g_ & &lt;b&gt; \\| <!--"]


def toml(text):
    return json.dumps(text)  # for text without control characters a JSON string is a TOML string


def named(title, names):
    return {'title = "Honey trailer 2.6 t: drawbar leg lapped under the box rail"': f"title = {toml(title)}",
            'name = "drawbar"': f"name = {toml(names[0])}", 'name = "rail"': f"name = {toml(names[1])}"}


def tame(text):
    return re.sub(r"\S", "n", text)


CASES = [
    Case("drawbar", "cli/demo/drawbar.toml", [], 0, GOOD),
    Case("suspension", "cli/demo/suspension.toml", [], 0, GOOD, again=True),
    Case("through-tube", "cli/demo/through-tube.toml", [], 0, GOOD, again=True),
    Case("bracket", "cli/demo/bracket.toml", ["--only", "sheet", "--only", "care"], 0, SHEETS),
    Case("offered", "cli/demo/drawbar.toml", ["--offer", "cli/demo/offers/stainless.toml", "--only", "comparison"], 0, {"comparison.html": Sheet(None, "refuse")}),
    Case("weak", "cli/demo/drawbar.toml", [], 1, BAD, edits={'class = "8.8"': 'class = "4.6"'}),
    Case("hostile", "cli/demo/drawbar.toml", [], 0, LONG, edits=named(TITLE, NAMES), literal=[TITLE, *NAMES], pictures=False),
    # The same lengths of words without anything to interpret: what elements the hostile pages may have.
    Case("tame", "cli/demo/drawbar.toml", [], 0, LONG, edits=named(tame(TITLE), [tame(name) for name in NAMES]), pictures=False, again=True),
]

# What tidy of Debian 12 says against right HTML5, each with the reason why it is right.
TIDY_EXEMPT = [
    r'<title> proprietary attribute "id"',  # it takes a picture's title for the page's
    r'<svg> proprietary attribute "(font-family|fill|stroke-linejoin)"',  # SVG's own, which it does not know
    r'<svg> attribute "(width|height)" has invalid value "[0-9.]+mm"',  # a length with its unit, as SVG has it
]


FONTS = """<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>/usr/share/fonts/truetype/liberation</dir><cachedir>{folder}/fonts</cachedir>
<selectfont><rejectfont><glob>*Italic*</glob><glob>*Narrow*</glob></rejectfont></selectfont>
<alias><family>Arial</family><prefer><family>Liberation Sans</family></prefer></alias>
<alias><family>Helvetica</family><prefer><family>Liberation Sans</family></prefer></alias>
<alias><family>sans-serif</family><prefer><family>Liberation Sans</family></prefer></alias>
<alias><family>serif</family><prefer><family>Liberation Serif</family></prefer></alias>
<alias><family>monospace</family><prefer><family>Liberation Mono</family></prefer></alias></fontconfig>
"""


class Browser:
    """One Chromium for all pages, a folder for its droppings and ours, and threads for the tools beside it. Its fonts are
    those of Debian's fonts-liberation alone, so that words are as wide on every machine."""

    def __init__(self):
        self.base = tempfile.TemporaryDirectory()
        self.folder = folder = pathlib.Path(self.base.name)
        self.workers = concurrent.futures.ThreadPoolExecutor(2)
        fonts = folder / "fonts.conf"
        fonts.write_text(FONTS.format(folder=folder))
        options = webdriver.ChromeOptions()
        options.binary_location = "/usr/bin/chromium"
        for flag in ("headless=new", "no-sandbox", "disable-gpu", "disable-dev-shm-usage", "hide-scrollbars", "no-first-run",
                     "disable-background-networking", "force-color-profile=srgb", f"user-data-dir={folder}/profile"):
            options.add_argument(f"--{flag}")
        options.set_capability("unhandledPromptBehavior", "dismiss")  # load() tells of it
        options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
        self.driver = webdriver.Chrome(options=options, service=Service("/usr/bin/chromedriver", env=os.environ | {"FONTCONFIG_FILE": str(fonts)}))
        self.driver.set_script_timeout(60)
        self.inspect = (HERE / "inspect.js").read_text()
        self.axe = (HERE / "axe.min.js").read_text()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.workers.shutdown()
        self.driver.quit()
        self.base.cleanup()

    def devtools(self, method, **parameters):
        return self.driver.execute_cdp_cmd(method, parameters)

    def medium(self, name, width):
        self.devtools("Emulation.setDeviceMetricsOverride", width=round(width), height=1000, deviceScaleFactor=1, mobile=False)
        self.devtools("Emulation.setEmulatedMedia", media=name)

    def load(self, page):
        """What the console or a dialog said, and what was asked of the network."""
        self.driver.get_log("browser"), self.driver.get_log("performance")
        self.driver.get(page.as_uri())
        said = [entry["message"] for entry in self.driver.get_log("browser") if entry["level"] in ("WARNING", "SEVERE")]
        events = [json.loads(entry["message"])["message"] for entry in self.driver.get_log("performance")]
        said += [event["params"]["message"] for event in events if event["method"] == "Page.javascriptDialogOpening"]
        asked = [event["params"]["request"]["url"] for event in events if event["method"] == "Network.requestWillBeSent"
                 and not event["params"]["documentURL"].startswith("chrome:")]
        return said, asked

    def look(self, medium, width):
        return self.driver.execute_script(self.inspect, medium, width)

    def accessibility(self):
        self.driver.execute_script(self.axe)
        return self.driver.execute_async_script(
            "const done = arguments[arguments.length - 1];"
            "axe.run(document, {resultTypes: ['violations'], runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice']})"
            ".then(r => done(r.violations.map(v => [v.id, v.help, v.nodes.slice(0, 3).map(n => n.html.slice(0, 120))])), e => done([['axe', String(e), []]]))")

    def paper_width(self):
        """CSS pixels between the margins of an A4 sheet, as the page's own @page has them; a browser's own margin is 1 cm."""
        return self.driver.execute_script("""
            const rules = [...document.styleSheets].filter(sheet => !sheet.href).flatMap(sheet => [...sheet.cssRules]).flatMap(rule => [rule, ...(rule.cssRules || [])]);
            const margin = side => rules.filter(rule => rule instanceof CSSPageRule).map(rule => rule.style[side]).filter(Boolean).at(-1) || '1cm';
            const probe = document.createElement('div');
            probe.style.cssText = `position: absolute; width: calc(210mm - ${margin('marginLeft')} - ${margin('marginRight')})`;
            document.body.append(probe);
            const width = probe.getBoundingClientRect().width;
            probe.remove();
            return width;""")

    def ink(self, picture):
        """The share of a picture's pixels that are not of its commonest colour."""
        shot = self.devtools("Page.captureScreenshot", captureBeyondViewport=True, optimizeForSpeed=True, clip={k: picture[k] for k in ("x", "y", "width", "height")} | {"scale": 1})
        grey = Image.open(io.BytesIO(base64.b64decode(shot["data"]))).convert("L")
        return 1 - max(grey.histogram()) / (grey.width * grey.height)

    def paper(self):
        return base64.b64decode(self.devtools("Page.printToPDF", preferCSSPageSize=True, printBackground=True)["data"])


SCREEN = 800


def plain(text):
    """Without differences of spacing, ligatures and soft hyphens."""
    return " ".join(unicodedata.normalize("NFKC", text).replace("\u00ad", "").split())


def run(*command, text=None):
    return subprocess.run(command, input=text, capture_output=True, text=True)


def on_paper(pdf, sheet, h1):
    """Faults of the printed page, and its first sheet as a small grey picture."""
    faults = []
    info = dict(line.split(":", 1) for line in run("pdfinfo", pdf).stdout.splitlines())
    if sheet.pages and int(info["Pages"]) != sheet.pages:
        faults.append(("pages", f"{info['Pages'].strip()} sheets of paper, wanted {sheet.pages}"))
    wide, high = (float(number) for number in re.findall(r"[\d.]+", info["Page size"])[:2])
    if abs(wide - 595.3) > 1.5 or abs(high - 841.9) > 1.5:
        faults.append(("paper", f"a sheet of {wide} x {high} pt is not A4"))
    text = plain(run("pdftotext", "-layout", pdf, "-").stdout)
    raw = plain(run("pdftotext", "-raw", pdf, "-").stdout)
    if len(h1) != 1 or plain(h1[0]) not in raw:
        faults.append(("paper-text", f"the heading is not on the paper: {h1}"))
    if sheet.verdict:
        words = next(words for words in VERDICTS if sheet.verdict in words)
        first = re.search(rf"\b({'|'.join(words)})", text, re.I)
        if not first or first[1].lower() != sheet.verdict:
            faults.append(("verdict", f"the first word of a verdict on the paper is {first[0] if first else 'none'}, wanted {sheet.verdict}"))
    pdftoppm = subprocess.run(["pdftoppm", "-png", "-gray", "-singlefile", "-scale-to-x", "480", "-scale-to-y", "-1", pdf], capture_output=True)
    picture = Image.open(io.BytesIO(pdftoppm.stdout)).convert("L")
    return faults, picture.resize((120, round(120 * picture.height / picture.width)), Image.BOX)


def markup(page):
    """What tidy says against the page, and xmllint against each picture in it."""
    faults = []
    for line in run("tidy", "-quiet", "-errors", "-utf8", "--drop-empty-elements", "no", page).stderr.splitlines():
        if re.search(r" - (Warning|Error):", line) and not any(re.search(exempt, line) for exempt in TIDY_EXEMPT):
            faults.append(("markup", line))
    for picture in re.findall(r"<svg\b.*?</svg>", page.read_text(), re.S):
        lint = run("xmllint", "--noout", "-", text=picture)
        if lint.returncode:
            faults.append(("picture-xml", lint.stderr.splitlines()[0]))
    return faults


# Loose, since browsers and their fonts differ. In grey levels of 255: a pixel counts as changed beyond CHANGED; a cell, a square of
# 17 mm, is lost where less than a quarter of its ink is left: words that run otherwise thin out a few, a picture gone empties many.
MEAN_DIFFERENCE, CHANGED, CHANGED_SHARE, CELL, INK, LOST_CELLS = 10, 40, 0.08, 10, 6, 3


def differences(picture, approved):
    if picture.size != approved.size:
        return [("looks", f"{picture.size} pixels, approved {approved.size}")]
    difference = ImageChops.difference(*(p.filter(ImageFilter.GaussianBlur(1)) for p in (picture, approved)))
    mean = ImageStat.Stat(difference).mean[0]
    share = sum(difference.histogram()[CHANGED:]) / (picture.width * picture.height)
    now, then = (ImageChops.invert(p).resize((p.width // CELL, p.height // CELL), Image.BOX).getdata() for p in (picture, approved))
    lost = sum(was > INK and ink < was / 4 for ink, was in zip(now, then))
    if mean > MEAN_DIFFERENCE or share > CHANGED_SHARE or lost > LOST_CELLS:
        return [("looks", f"unlike the approved picture: {mean:.1f} grey levels off (at most {MEAN_DIFFERENCE}), {100 * share:.1f} % of it strongly "
                          f"(at most {100 * CHANGED_SHARE:.0f} %), {lost} squares emptied (at most {LOST_CELLS})")]
    return []


def looks(picture, approved, received, approve):
    """Against the approved picture; None: against nothing but a blank sheet."""
    if ImageStat.Stat(picture).stddev[0] < 2:
        return [("blank", "there is nothing on the first sheet")]
    if approved is None:
        return []
    if approve:
        approved.parent.mkdir(exist_ok=True)
        picture.save(approved, optimize=True)
        return []
    faults = differences(picture, Image.open(approved)) if approved.exists() else [("looks", f"no approved picture {approved.name}: see --approve")]
    if faults:
        received.mkdir(parents=True, exist_ok=True)
        picture.save(received / approved.name)
    return faults


def examine(browser, page, sheet, approved=None, received=None, approve=False, axe=True):
    """All about one page. Answers its faults and what the browser saw; what needs no browser is still on its way, as a future."""
    browser.medium("screen", SCREEN)
    said, asked = browser.load(page)
    faults = [("console", words) for words in said]
    faults += [("request", url) for url in asked if url != page.as_uri()]
    if page.as_uri() not in asked:
        faults.append(("request", "the page was not loaded"))
    seen = browser.look("screen", SCREEN)
    faults += seen["faults"]
    faults += [("picture-blank", f"{p['name']}: nothing is drawn") for p in seen["pictures"] if not (p["width"] and p["height"] and browser.ink(p) > 0.002)]
    faults += [(f"axe {rule}", f"{words}: {nodes}") for rule, words, nodes in (browser.accessibility() if axe else [])]
    width = browser.paper_width()
    browser.medium("print", width)
    faults += browser.look("print", width)["faults"]
    pdf = page.with_suffix(".pdf")
    pdf.write_bytes(browser.paper())

    def rest():
        found, picture = on_paper(pdf, sheet, seen["h1"])
        return found + markup(page) + looks(picture, approved, received, approve)

    future = browser.workers.submit(rest)
    browser.devtools("Emulation.setScriptExecutionDisabled", value=True)
    browser.medium("screen", SCREEN)
    browser.load(page)
    if plain(browser.look("screen", SCREEN)["text"]) != plain(seen["text"]):
        faults.append(("script", "without scripts the page reads otherwise"))
    browser.devtools("Emulation.setScriptExecutionDisabled", value=False)
    return faults, seen, future


def drawing(browser, file):
    """A picture in a file of its own."""
    browser.medium("screen", SCREEN)
    said, asked = browser.load(file)
    found = browser.look("screen", SCREEN)["faults"]
    # axe and these pages' rules about documents are not for a bare picture.
    return ([("console", words) for words in said] + [("request", url) for url in asked if url != file.as_uri()]
            + [fault for fault in found if fault[0] in ("script", "ids", "text-outside", "text-overlap")])


def as_text(document):
    return plain(html.unescape(re.sub(r"<[^>]*>", "", document)))


def in_markdown(text, literal):
    """Text of the joint file must reach the reader as it is, and a table's rows must have the columns of its head."""
    faults = []
    parser = markdown_it.MarkdownIt("commonmark").enable("table")
    tokens = parser.parse(text)
    inner = tokens + [child for token in tokens for child in token.children or []]
    for token in inner:
        if token.type.startswith("html_") or token.type == "image":
            faults.append(("markdown", f"markup: {token.content[:80]}"))
        if re.match(r"\s*javascript:", str(token.attrs.get("href", "")), re.I):
            faults.append(("markdown", f"a link: {token.attrs['href']}"))
    if re.search(r"(?<!\\)<script", text, re.I):
        faults.append(("markdown", "<script stands there bare"))
    lines = text.splitlines()
    for token in (t for t in tokens if t.type == "table_open"):
        first, last = token.map
        columns = parser.parse("\n".join(lines[first:last]))
        wanted = sum(t.type == "th_open" for t in columns)
        for row in lines[first + 2:last]:
            # A parser drops cells too many and fills up cells too few. As a head of `wanted` columns, though, a row makes a table only if it has just these.
            if not any(t.type == "table_open" for t in parser.parse(row + "\n" + "|---" * wanted + "|\n")):
                faults.append(("markdown", f"not {wanted} cells: {row[:100]}"))
    rendered = as_text(parser.render(text))
    faults += [("markdown", f"not to be read as it is: {words}") for words in literal if plain(words) not in rendered]
    return faults


def in_csv(text):
    rows = list(csv.reader(io.StringIO(text)))
    faults = [("csv", f"{len(row)} cells under {len(rows[0])} headings: {row}") for row in rows if len(row) != len(rows[0])]
    return faults + [("csv", f"a spreadsheet would work this out: {cell}") for row in rows for cell in row if cell[:1] in tuple("=+-@\t\r")]


def intruders(hostile, tame):
    """Elements on the page with the hostile words that the page with tame words of the same length does not have."""
    wrapped = {"text", "tspan", "br", "wbr"}  # words of other widths make other lines
    return [("intruder", f"{hostile.get(name, 0)} <{name}>, with tame words {tame.get(name, 0)}") for name in sorted({*hostile, *tame} - wrapped)
            if hostile.get(name, 0) != tame.get(name, 0)] + [("intruder", f"<{name}>") for name in ("script", "img", "b") if hostile.get(name) and not tame.get(name)]


def test_case(browser, case, program, root, build, approve):
    """Writes the documents of a case and looks at each. Answers {file: faults}, {page: its elements by name}, {page: a future of more faults}."""
    faults, elements, pending = collections.defaultdict(list), {}, {}
    text = (root / case.joint).read_text()
    for there, instead in case.edits.items():
        assert there in text, f"{case.joint}: {there} is not there to be changed"
        text = text.replace(there, instead, 1)
    joint, folder = browser.folder / f"{case.name}.toml", browser.folder / case.name
    joint.write_text(text)
    told = subprocess.run([program, "report", joint, "--output", folder, *case.options], capture_output=True, text=True, cwd=root)
    if told.returncode != case.status:
        faults[""].append(("status", f"{told.returncode}, wanted {case.status}: {told.stderr.strip()}"))
    written = {file.name: file for file in sorted(folder.iterdir())} if folder.exists() else {}
    whole = set() if "--only" in case.options else {"calculation.md", "parts.csv"}
    for name in sorted({*case.pages, *whole} - written.keys()):
        faults[name].append(("missing", "was not written"))
    for name, file in written.items():
        words = case.literal if file.stem == "calculation" else case.literal[:1]
        if name in case.pages:
            approved = HERE / "approved" / f"{case.name}-{file.stem}.png" if case.pictures else None
            found, seen, pending[name] = examine(browser, file, case.pages[name], approved, build / "received" / "pages", approve,
                                                  axe=not (case.again and file.stem == "calculation"))
            faults[name] += found
            faults[name] += [("literal", f"not to be read as it is: {word}") for word in words if plain(word) not in plain(seen["text"])]
            elements[name] = seen["elements"]
        elif file.suffix == ".html":
            faults[name].append(("unknown", "nothing says what is wanted of it"))
        elif file.suffix == ".svg":
            faults[name] += drawing(browser, file)
        elif file.suffix == ".md":
            faults[name] += in_markdown(file.read_text(), words)
        elif file.suffix == ".csv":
            faults[name] += in_csv(file.read_text())
    return faults, elements, pending


def test_pages(browser, cases, program, root, build, approve=False):
    """Faults as (case, file, kind, words)."""
    faults, elements, pending = {}, {}, {}
    for case in cases:
        faults[case.name], elements[case.name], pending[case.name] = test_case(browser, case, program, root, build, approve)
    hostile, tame = elements.get("hostile", {}), elements.get("tame", {})
    for name in hostile.keys() & tame.keys():
        faults["hostile"][name] += intruders(hostile[name], tame[name])
    for name, futures in pending.items():
        for file, future in futures.items():
            faults[name][file] += future.result()
    return [(name, file, kind, words) for name, files in faults.items() for file, found in files.items() for kind, words in found]


# The self-test: a page without fault, and how to spoil it. What is wanted are exactly the kinds of faults named: no other ones either.
SAMPLE = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Sample sheet</title>
<style>
@page { size: A4; margin: 12mm 15mm; }
body { font: 11pt/1.4 sans-serif; color: #111; background: #fff; margin: 0 auto; max-width: 180mm; }
table { border-collapse: collapse; width: 100%; }
th, td { border: 1px solid #444; padding: 1mm 2mm; text-align: left; }
svg { display: block; width: 100%; }
.small { width: 50mm; }
.wide { overflow-x: auto; }
@media print { .wide { overflow: visible; } }
</style>
</head>
<body>
<main>
<h1>Sample sheet of a joint</h1>
<p id="verdict">PASS: every check of this joint is met.</p>
<table>
<caption>Checks</caption>
<thead><tr><th scope="col">check</th><th scope="col">utilisation</th></tr></thead>
<tbody><tr><td>slip</td><td>0.71</td></tr><tr><td>bearing</td><td>0.43</td></tr></tbody>
</table>
<div class="wide" tabindex="0" role="region" aria-label="Pattern"><p>Four bolts.</p></div>
<svg viewBox="0 0 160 70" role="img" aria-labelledby="pattern"><title id="pattern">Four holes in a plate</title>
<rect x="10" y="5" width="140" height="50" fill="#cfd8e3" stroke="#000"/>
<circle cx="40" cy="30" r="8" fill="#fff" stroke="#000"/><circle cx="120" cy="30" r="8" fill="#fff" stroke="#000"/>
<text x="40" y="50" font-size="5" text-anchor="middle">hole 1</text><text x="120" y="50" font-size="5" text-anchor="middle">hole 2</text>
<text x="5" y="40" font-size="5" transform="rotate(-90 5 40)">50 mm</text><text x="70" y="64" font-size="5">140 mm</text></svg>
<svg class="small" viewBox="0 0 50 30" role="img" aria-label="One bolt"><path d="M5 5h8v20h-8zM13 11h30v8h-30zM13 15h30M34 11v8M37 11v8M40 11v8" fill="none" stroke="#000" stroke-width="0.5"/></svg>
<h2>What to do</h2>
<p>Tighten crosswise. See <a href="#verdict">the verdict</a>.</p>
</main>
</body>
</html>
"""
SMALL = SAMPLE[SAMPLE.index('<svg class="small"'):SAMPLE.index("<h2>")]
PICTURE = SAMPLE[SAMPLE.index("<svg"):SAMPLE.index("</svg>") + len("</svg>")]
FILLING = "".join(f"<p>Line {number} of too many.</p>" for number in range(60))
SPOILT = [
    # what is spoilt, {what is there: what is put in its place}, the kinds of faults wanted: just these, but that "looks" may come with any other
    ("nothing", {}, set()),
    ("other words of the same length and a little more space", {"Tighten crosswise.": "Fasten in circles.", "11pt/1.4": "11pt/1.42"}, set()),
    ("words wrapped otherwise", {"every check of this joint is met.": "every check of this joint is met. " + "It may be built as it is drawn here. " * 3}, set()),
    ("a region that scrolls on the screen and wraps on paper", {"Four bolts.": '<span style="white-space: nowrap">' + "Four bolts. " * 14 + "</span>",
                                                                ".wide { overflow: visible; }": ".wide { overflow: visible; } .wide span { white-space: normal !important; }"}, set()),
    ("a warning on the console", {"</main>": '<svg role="img" viewBox="0 0 9 9" style="width: 9px"><title>x</title><rect width="wide" height="4"/><circle r="4"/></svg></main>'}, {"console"}),
    ("a picture from the network", {"</main>": '<img alt="a logo" src="http://127.0.0.1:8/logo.png"></main>'}, {"console", "request"}),
    ("a style from a file beside it", {"<style>": '<link rel="stylesheet" href="style.css"><style>'}, {"console", "request", "script"}),
    ("a picture from a style", {"background: #fff": "background: #fff url(http://127.0.0.1:8/paper.png)"}, {"console", "request"}),
    ("a script that changes the page", {"</main>": "</main><script>document.querySelector('p').textContent = 'PASS!'</script>"}, {"script"}),
    ("words for readers without scripts", {"</main>": "<noscript><p>Switch scripts on.</p></noscript></main>"}, {"script"}),
    ("a handler of events", {'<p id="verdict">': '<p id="verdict" onclick="alert(1)">'}, {"script"}),
    ("a link that runs a script", {'href="#verdict"': 'href="javascript:alert(1)"'}, {"script"}),
    ("a page wider than the window", {"Four bolts.": '<span style="display:inline-block;width:900px">Four bolts.</span>', ".wide { overflow-x: auto; }": ""}, {"overflow", "cut-off"}),
    ("a table wider than paper", {"<table>": '<table style="min-width: 195mm">'}, {"cut-off"}),
    ("a long word beyond the edge of the paper", {"Four bolts.": "m" * 70}, {"cut-off"}),
    ("a region that scrolls on paper too", {"Four bolts.": "m" * 90, "@media print { .wide { overflow: visible; } }": ""}, {"cut-off"}),
    ("lines hidden where they do not fit", {"<p>Four bolts.</p>": '<p style="height: 1.4em; overflow: hidden">Four bolts.<br>And four nuts.</p>'}, {"cut-off"}),
    ("pale letters", {"color: #111": "color: #aaa"}, {"axe color-contrast"}),
    ("no language", {'<html lang="en">': "<html>"}, {"axe html-has-lang"}),
    ("a heading left out", {"<h2>What to do</h2>": "<h4>What to do</h4>"}, {"axe heading-order"}),
    ("a region to scroll that no key reaches", {' tabindex="0"': "", "Four bolts.": "m" * 90, "overflow: visible": "overflow: visible; overflow-wrap: anywhere"},
     {"axe scrollable-region-focusable"}),
    ("an image without words", {"</main>": '<img src="data:image/gif;base64,R0lGODlhAQABAAAAACH5BAEKAAEALAAAAAABAAEAAAICTAEAOw=="></main>'}, {"axe image-alt", "request", "markup"}),
    ("a head of a column without scope", {'<th scope="col">check': "<th>check"}, {"table"}),
    ("a picture without a title", {'<title id="pattern">Four holes in a plate</title>': "", ' aria-labelledby="pattern"': ""}, {"picture-name", "axe svg-img-alt"}),
    ("a picture whose name is lost", {'<title id="pattern">': "<title>"}, {"ids"}),
    ("the same id twice", {"<h2>": '<h2 id="verdict">'}, {"ids", "markup"}),
    ("a link to nothing", {'href="#verdict"': 'href="#verdicts"'}, {"ids"}),
    ("elements that cross", {"PASS: every check of this joint is met.": "PASS: <b>every <i>check</b> of</i> this joint is met."}, {"markup"}),
    ("an element never closed", {"</table>": ""}, {"markup"}),
    ("no document type", {"<!doctype html>\n": ""}, {"markup"}),
    ("a picture that is not XML", {'<rect x="10"': "<rect x=10"}, {"picture-xml"}),
    ("text outside of its picture", {'x="70" y="64"': 'x="70" y="72"'}, {"text-outside"}),
    ("turned text outside of its picture", {"rotate(-90 5 40)": "rotate(-90 5 12)", 'x="5" y="40"': 'x="5" y="12"'}, {"text-outside"}),
    ("text on text", {'x="120" y="50"': 'x="50" y="51"'}, {"text-overlap"}),
    ("turned text on text", {"rotate(-90 5 40)": "translate(69 25) rotate(-90 5 40)"}, {"text-overlap"}),
    ("a picture with nothing in it", {PICTURE: re.sub(r"<(rect|circle|text)[^>]*>([^<]*</text>)?", "", PICTURE)}, {"picture-blank", "looks"}),
    ("a picture of no size", {"svg { display: block; width: 100%; }": "svg { display: block; width: 0; }"}, {"picture-blank", "looks"}),
    ("a picture gone", {PICTURE: ""}, {"looks"}),
    ("a small picture gone, its place left empty", {SMALL: '<p style="height: 30mm"></p>'}, {"looks"}),
    ("a small picture gone, what follows moved up", {SMALL: ""}, {"looks"}),
    ("a sheet of two pages", {"</main>": FILLING + "</main>"}, {"pages"}),
    ("another size of paper", {"size: A4": "size: letter"}, {"paper"}),
    ("paper on its side", {"size: A4": "size: A4 landscape"}, {"paper", "pages"}),
    ("a heading that is not printed", {"@media print {": "@media print { h1 { display: none; }"}, {"paper-text"}),
    ("another verdict", {"PASS: every": "FAIL: not every"}, {"verdict"}),
    ("nothing printed", {"@media print {": "@media print { main { visibility: hidden; }"}, {"paper-text", "verdict", "blank"}),
    ("an empty page", {SAMPLE[SAMPLE.index("<main>"):SAMPLE.index("</main>")]: "<main>"}, {"paper-text", "verdict", "blank", "axe page-has-heading-one"}),
]

MARKDOWN = "# Joint\n\n| part | size |\n|---|---|\n| {} | 3 |\n"


# Stands in for the program: writes the sample as its page, with the words of the joint file on it.
STAND_IN = """#!/usr/bin/python3
import html, pathlib, sys, tomllib
joint = tomllib.loads(pathlib.Path(sys.argv[2]).read_text())
words = html.escape(joint["title"]) + "".join(" and " + html.escape(part["name"]) for part in joint["part"] if "name" in part)
folder = pathlib.Path(sys.argv[4])
folder.mkdir()
sample = pathlib.Path(__file__).with_name("sample.html").read_text()
for name in ("calculation",):
    (folder / (name + ".html")).write_text(sample.replace("Four bolts.", words))
(folder / "calculation.md").write_text("".join("\\\\" + c if c in "<>[]()*_`|&!=\\\\" else c for c in html.unescape(words)))
(folder / "parts.csv").write_text("part,size\\n")
"""
PLAYED = {"calculation.html": Sheet(1, "pass")}


def self_test():
    wrong = []

    def expect(what, faults, wanted):
        kinds = {kind for kind, _ in faults}
        if kinds - ({"looks"} if wanted else set()) != wanted - {"looks"} or wanted - kinds:
            wrong.append(f"{what}: found {sorted(kinds)}, wanted {sorted(wanted)}: {faults}")

    with Browser() as browser:
        base = browser.folder
        approved = base / "approved.png"
        pending = []
        for number, (what, edits, wanted) in enumerate(SPOILT):
            page = base / f"{number}.html"
            text = SAMPLE
            for there, instead in edits.items():
                assert there in text, f"{what}: {there} is not there to be spoilt"
                text = text.replace(there, instead, 1)
            page.write_text(text)
            faults, _, future = examine(browser, page, Sheet(1, "pass"), approved, base / "received", approve=number == 0)
            if number == 0:
                future.result()  # the others are compared with its picture
            pending.append((what, faults, future, wanted))
        for what, faults, future, wanted in pending:
            expect(what, faults + future.result(), wanted)
        grey = Image.linear_gradient("L").resize((120, 170))
        expect("no approved picture", looks(grey, base / "none.png", base / "received", False), {"looks"})

        picture = base / "picture.svg"
        for what, text, wanted in (("a picture by itself", PICTURE, set()), ("one with a script", PICTURE.replace("<rect", "<script>1</script><rect", 1), {"script"}),
                                   ("one with text on text", PICTURE.replace('x="120" y="50"', 'x="50" y="51"'), {"text-overlap"})):
            picture.write_text(text.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1))
            expect(what, drawing(browser, picture), wanted)

        # Whole cases: a program that writes good pages, and programs that do not.
        root = pathlib.Path(__file__).resolve().parents[1]
        hostile, tame = (dataclasses.replace(case, pages=PLAYED) for case in CASES[-2:])
        for what, cases, edits, wanted in (
                ("a program that does well", [hostile, tame], {}, set()),
                ("one that writes words as markup", [hostile, tame], {"html.escape(joint": "(joint"}, {"intruder", "literal", "script", "console"}),
                ("one that writes names as markup", [hostile, tame], {"html.escape(part": "(part"},
                 {"intruder", "literal", "script", "console", "request", "markup", "axe image-alt", "markdown"}),
                ("one that forgets Markdown", [tame, hostile], {'if c in "<>': 'if c in "'}, {"markdown"}),
                ("one that leaves a page out", [tame], {'"calculation",': ""}, {"missing"}),
                ("one that writes a page too many", [tame], {'"calculation",': '"calculation", "other"'}, {"unknown"}),
                ("one that ends otherwise", [tame], {'size\\n")': 'size\\n"); sys.exit(1)'}, {"status"})):
            program = base / "stand-in"
            text = STAND_IN
            for there, instead in edits.items():
                assert there in text, f"{what}: {there} is not there"
                text = text.replace(there, instead)
            program.write_text(text)
            program.chmod(0o755)
            (base / "sample.html").write_text(SAMPLE)
            expect(what, [fault[2:] for fault in test_pages(browser, cases, program, root, base)], wanted)
            for case in cases:
                shutil.rmtree(base / case.name)

    escaped = re.sub(r"([\\`*_{}\[\]<>()#+\-.!|&\"])", r"\\\1", TITLE)
    for what, cell, literal, wanted in (("Markdown", "rail", [], set()), ("a pipe", "a|b", [], {"markdown"}), ("a pipe escaped", "a\\|b", ["a|b"], set()),
                                        ("a cell too few", "a |", [], {"markdown"}), ("markup", TITLE, [TITLE], {"markdown"}), ("markup escaped", escaped, [TITLE], set()),
                                        ("an image", "![a](b.png)", [], {"markdown"}), ("a title lost", "x", [TITLE], {"markdown"}),
                                        ("a word eaten as a mark", "*f*", ["*f*"], {"markdown"})):
        expect(what, in_markdown(MARKDOWN.format(cell), literal), wanted)
    for what, cell, wanted in (("a list", "rail", set()), ("a formula", "=1+1", {"csv"}), ("a formula in quotes", '"@SUM(A1)"', {"csv"}), ("a comma", "a,b", {"csv"})):
        expect(what, in_csv(f"part,size\n{cell},3\n"), wanted)
    print("\n".join(wrong) or f"every fault of {len(SPOILT)} pages was found")
    return bool(wrong)


def main(program, root, build, *switches):
    with Browser() as browser:
        faults = test_pages(browser, CASES, *(pathlib.Path(p).resolve() for p in (program, root, build)), "--approve" in switches)
    print("\n".join(f"{case}/{file}: {kind}: {words}" for case, file, kind, words in faults) or f"the pages of {len(CASES)} joints are as they should be")
    return bool(faults)


if __name__ == "__main__":
    sys.exit(self_test() if sys.argv[1:] == ["--self-test"] else main(*sys.argv[1:]))
