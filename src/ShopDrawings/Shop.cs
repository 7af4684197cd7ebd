using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.ProjectFile;
using ShopDrawings.Yaml;
using CuttingProgress = ShopDrawings.Cutting.CuttingProgress;

namespace ShopDrawings;

/// <summary>
/// The whole way from a text to files, in five calls: <see cref="Load"/>, <see cref="Resolve"/>, <see cref="Check"/>, <see cref="Draw"/>,
/// <see cref="Export"/>. Pure: no files, clock, culture or environment; the same input gives the same bytes. Thread-safe.
/// </summary>
public static class Shop
{
    /// <summary>Reads a project file.</summary>
    /// <param name="text">Its text.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <param name="sources">The files it may name, such as catalogues; none where it is left out.</param>
    /// <returns>The project, or every mistake in it and in the files it names, with line, column and cure.</returns>
    public static Outcome<Project> Load(string text, string fileName, Sources? sources = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var diagnostics = new List<Diagnostic>();
        if (YamlReader.Read(text, fileName, "project: Wall cupboard", diagnostics) is not { } root) return Outcome<Project>.Of(null, diagnostics);
        var unit = Reading.UnitOf(root);
        ProjectShapes.Project.TryRead(root, new Reading(unit, diagnostics), out var model);
        var catalogues = CatalogueFile.ReadAll(model?.CatalogueNames ?? [], sources ?? Sources.None, diagnostics);
        if (model is null || diagnostics.Count > 0) return Outcome<Project>.Of(null, diagnostics);
        var lengths = unit == Measure.Inch || unit == Measure.Foot ? LengthStyle.Inches : LengthStyle.Millimetres;
        return Outcome<Project>.Of(new Project(model with { Catalogues = catalogues }, lengths), diagnostics);
    }

    /// <summary>Works out every panel, hole and joint.</summary>
    /// <returns>The design, or every mistake that only shows when sizes meet: unknown names, sizes that leave nothing.</returns>
    /// <param name="project">The project.</param>
    /// <param name="progress">Told how far the search for the cheapest sheets is, board by board.</param>
    /// <param name="stop">Ends that search with the best plans so far, which then depend on the time.</param>
    public static Outcome<Design> Resolve(Project project, IProgress<CuttingProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(project);
        var diagnostics = new List<Diagnostic>();
        return Outcome<Design>.Of(ProjectResolver.Resolve(project.Model, project.Lengths, diagnostics, progress, stop), diagnostics);
    }

    /// <summary>Looks for what would go wrong before anything is cut.</summary>
    public static ImmutableArray<Finding> Check(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        ImmutableArray<Finding> findings = [.. Kernel.Check.RunAll(design.Assembly, design.Checks, design.Lengths), .. design.Machining.SelectMany(m => m.Plan.Findings), .. design.Guides?.Findings ?? [], .. CuttingPlanner.Findings(design.Cutting, design.Lengths)];
        var withheld = new Job(design, findings, []).Withheld;
        return [.. findings, .. design.Machining.SelectMany(m => m.Plan.Withholding(withheld))];
    }

    /// <summary>Makes every drawing; a panel that must not be cut gets no machine drawing and a stamp on its sheet.</summary>
    public static Job Draw(Design design, ImmutableArray<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(design);
        var job = new Job(design, findings, []);
        var withheld = job.Withheld;
        var drawings = ImmutableArray.CreateBuilder<JobDrawing>();
        var twins = PanelTwins.Find(design.Assembly.Panels);
        var stacks = PanelStacks.Find(design.Assembly.Panels);
        var sheets = ImmutableArray.CreateBuilder<Drawing>();
        void Add(string path, Drawing sheet)
        {
            sheets.Add(sheet);
            drawings.AddRange(design.Drawings.Files(path, sheet));
        }

        void AddMachined(MachineProfile profile, string folder, FaceProgram program)
        {
            var drawing = MachineDrawing.Of(program, profile.Drawing);
            drawings.Add(new($"machines/{profile.Machine.Name}/{folder}/{program.Name}-{profile.UnitSuffix}", profile.Format, drawing) { Exporter = profile.For(drawing, design.Assembly.Name, program.Name, program.Panels[0].Panel.Board.Name) });
        }

        foreach (var (name, sheet) in AssemblySheets.Of(design.Assembly, design.Drawings.Sheets)) Add($"drawings/{name}", sheet);
        foreach (var panel in design.Assembly.Panels)
        {
            var own = PanelSheet.Of(panel, design.Assembly.Name, design.Drawings.Sheets, findings, twins.GetValueOrDefault(panel.Id), stacks.FirstOrDefault(s => s.Panels.Any(p => p.Id == panel.Id)));
            for (var i = 0; i < own.Length; i++) Add(i == 0 ? $"panels/{panel.Id}" : string.Create(CultureInfo.InvariantCulture, $"panels/{panel.Id}_{i + 1}"), own[i]);
        }

        foreach (var (path, sheet) in CuttingDrawings.Of(design.Cutting, design.Assembly.Name, design.Drawings.Sheets, id => design.Assembly.Panels.FirstOrDefault(p => p.Id == id), withheld)) Add(path, sheet);
        foreach (var (profile, plan) in design.Machining)
            foreach (var program in plan.Programs.Where(p => !p.Panels.Any(l => withheld.Contains(l.Panel.Id))))
                AddMachined(profile, program.Sheet is null ? "panels" : "sheets", program);

        if (design.Guides is { } guides)
            foreach (var (guide, places) in guides.Serving(withheld))
            {
                foreach (var panel in guide.Fences.Select(f => f.Panel).Prepend(guide.Plate))
                    foreach (var (sheet, i) in PanelSheet.Of(panel, design.Assembly.Name, design.Drawings.Sheets, []).Select((s, i) => (s, i))) Add(i == 0 ? $"guides/{panel.Id}" : string.Create(CultureInfo.InvariantCulture, $"guides/{panel.Id}_{i + 1}"), sheet);
                Add($"guides/{guide.Name}", GuideSheet.Of(guide, places, design.Assembly.Name, guides.Settings, design.Drawings.Sheets));
                foreach (var (_, program) in guides.Programs.Where(p => p.Guide == guide)) AddMachined(guides.Profile, "guides", program);
            }

        return job with { Drawings = drawings.ToImmutable(), Sheets = sheets.ToImmutable() };
    }

    /// <summary>
    /// The files of a job, drawings first, then what each exporter of the set writes in its order; a drawing whose format no exporter knows is left out.
    /// </summary>
    /// <exception cref="ExporterException">An exporter failed, or two give one path; writing a file may throw it too.</exception>
    public static ImmutableArray<Output> Export(Job job, ExporterSet exporters)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(exporters);
        var files = new OutputList();
        foreach (var drawing in job.Drawings)
            if (exporters.Find(drawing.Format) is { } exporter) files.Add(drawing.Exporter?.GetType() == exporter.GetType() ? drawing.Exporter : exporter, drawing);
        foreach (var exporter in exporters.Jobs) files.Add(exporter, job);
        return files.ToImmutable();
    }
}
