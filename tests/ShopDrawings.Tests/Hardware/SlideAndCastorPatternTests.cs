using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Hardware.InACabinet;

namespace ShopDrawings.Tests.Hardware;

/// <summary>Slides, drawers and castors in a cabinet of 16 mm board, 568 between the sides, worked out by hand.</summary>
public class SlideAndCastorPatternTests
{
    private static string Slide(string play) =>
        $"slides: {{asked: {{length: 500, thickness: 12.7, height: 45, play: {play}, travel: 375, rating: 45 kg, cabinet-holes: [35, 451], runner-holes: [35, 419], hole-diameter: 2.5, hole-depth: 11}}}}";

    // SL-01, SL-02, SL-03.
    [Theory]
    [InlineData("0.35", 541.9)]
    [InlineData("0.2", 542.2)]
    [InlineData("0.5", 541.6)]
    public void Shelf_leaves_thickness_and_play_on_each_side(string play, double width)
    {
        var block = Of(16, 560, "sliding-shelf: {slide: asked}", Slide(play)).Block("sliding-shelf");

        Assert.Equal(width, block[1] - block[0], 1e-6);
    }

    // SL-04: 568 − 2 × 13 − 2 × 16 = 510, as a hinge that opens 110 degrees stands 15 in the way.
    [Fact]
    public void Packers_bring_the_slides_past_open_doors()
    {
        var design = Of(16, 560, "sliding-shelf: {slide: asked}, doors: {board: main, hinge: cup-35-110}", Slide("0.3"));

        Assert.Equal((45.0, 555.0), (design.Block("sliding-shelf")[0], design.Block("sliding-shelf")[1]));
        // As long as the slide, 15 higher (common practice, no source), about its centre line at 16 + 10 + 35 = 61.
        Assert.Equal([16, 32, 3, 503, 31, 91], design.Block("left-packer"));
        Assert.Equal([568, 584, 3, 503, 31, 91], design.Block("right-packer"));
        Same(["left-packer 32 38 61 -x 2.5 deep 11 pilot", "left-packer 32 454 61 -x 2.5 deep 11 pilot", "left-runner 45 38 61 +x 2.5 deep 11 pilot", "left-runner 45 422 61 +x 2.5 deep 11 pilot"], design.Bores("left-slide"));
    }

    // Set-back 3 and the slide's own places; SL-07's three quarters of 500 as it travels.
    [Fact]
    public void Slide_is_drilled_on_both_sides_at_its_own_places()
    {
        var design = Of(16, 560, "sliding-shelf: {slide: asked}", Slide("0.35"));

        Same(
            ["right-side 584 38 61 +x 2.5 deep 11 pilot", "right-side 584 454 61 +x 2.5 deep 11 pilot", "right-runner 570.95 38 61 -x 2.5 deep 11 pilot", "right-runner 570.95 422 61 -x 2.5 deep 11 pilot"],
            design.Bores("right-slide"));
        var travel = Assert.IsType<Travel>(Assert.Single(design.Assembly.Motions));
        Assert.Equal((Direction.Front, 375.0), (travel.Towards, travel.Distance.Value));
        Assert.Equal(["sliding-shelf", "left-runner", "right-runner"], travel.Panels);
    }

    // 3 − 20 to 503 + 30, and 3 − 2 to 503 + 10; the slides stay.
    [Fact]
    public void What_reaches_beyond_leaves_the_slides_alone()
    {
        var (plain, beyond) = (Of(16, 560, "sliding-shelf: {slide: asked}", Slide("0.35")), Of(16, 560, "sliding-shelf: {slide: asked, beyond: {shelf-front: 20, shelf-back: 30, runner-front: 2, runner-back: 10}}", Slide("0.35")));

        Assert.Equal([-17.0, 533], beyond.Block("sliding-shelf")[2..4]);
        Assert.Equal([1.0, 513], beyond.Block("left-runner")[2..4]);
        Assert.Equal(plain.Bores("left-slide"), beyond.Bores("left-slide"));
    }

    // SL-05: 560 − 3 − 50 = 507 takes 500 and not 550.
    [Theory]
    [InlineData(560, true)]
    [InlineData(553, true)]
    [InlineData(552.9, false)]
    public void Slide_needs_set_back_and_room_for_cables(double depth, bool fits) =>
        Assert.Equal(fits, !Of(16, depth, "sliding-shelf: {slide: asked}", Slide("0.35")).Faults().Any());

    // Fronts: 600 − 3 = 597 wide, (700 − 3 − 3)/2 = 347 high. The box from 16 + 12 = 28 to 348.5 − 18 = 330.5, 541.9 wide and, from 2 before the carcass, 505 long; its bottom
    // reaches 5.5 into the grooves, 12.1 above its lower edge: 509.9 + 11 by 473 + 11.
    [Fact]
    public void Drawers_with_overlay_fronts()
    {
        var design = Of(16, 560, "drawers: {count: 2, slide: side-500, bottom: thin}");

        Assert.Equal([1.5, 598.5, -18, -2, 1.5, 348.5], design.Block("drawer-1-front"));
        Assert.Equal([1.5, 598.5, -18, -2, 351.5, 698.5], design.Block("drawer-2-front"));
        Assert.Equal([29.05, 45.05, -2, 503, 28, 330.5], design.Block("drawer-1-left"));
        Assert.Equal([45.05, 554.95, -2, 14, 28, 330.5], design.Block("drawer-1-box-front"));
        Assert.Equal([45.05, 554.95, 487, 503, 28, 330.5], design.Block("drawer-1-box-back"));
        Assert.Equal([39.55, 560.45, 8.5, 492.5, 40.1, 46.1], design.Block("drawer-1-bottom"));
        Assert.Equal([29.05, 45.05, -2, 503, 363.5, 666], design.Block("drawer-2-left"));
        Assert.Empty(design.Faults());
    }

    // Fronts between the panels: 568 − 4 wide, (668 − 4 − 2)/2 = 331 high, 16 deep; the slides begin behind them. The bottom lies under the box.
    [Fact]
    public void Drawers_with_inset_fronts_and_a_bottom_under()
    {
        var design = Of(16, 560, "drawers: {count: 2, slide: side-500, bottom: thin, mount: inset, bottom-fit: under}");

        Assert.Equal([18, 582, 0, 16, 18, 349], design.Block("drawer-1-front"));
        Assert.Equal([18, 582, 0, 16, 351, 682], design.Block("drawer-2-front"));
        Assert.Equal([29.05, 45.05, 16, 516, 30, 331], design.Block("drawer-1-left"));
        Assert.Equal([29.05, 570.95, 16, 516, 24, 30], design.Block("drawer-1-bottom"));
        Assert.Contains("left-side 16 51 180.5 -x 2.5 deep 11 pilot", design.Bores("drawer-1/left-slide"));
        Assert.Empty(design.Faults());
    }

    // A box 56 high has its rows at a quarter, 14 above its edge, right on the groove from 12 to 18.2: the lower row moves off it.
    [Fact]
    public void Screws_of_a_low_front_stay_off_the_groove() =>
        Assert.Empty(Of(16, 560, "drawers: {heights: [114, rest], slide: side-500, bottom: thin, handle: {hardware: pull-128}}").Faults());

    // Plates 2-3/4 × 3-3/4 in, holes of 11/32 in (8.73125) on 1-3/4 × 3 (castor dealers' pages), 5 mm inside: middle at 16 + 34.925 + 5 = 55.925 and 47.625 + 5 = 52.625.
    [Theory]
    [InlineData("")]
    [InlineData(", corners: {bottom: {housing: 6}}")]
    public void Castors_are_bolted_through_the_bottom(string joint) => Same(
        [
            "bottom 33.7 14.525 0 +z 8.7312 through clearance", "bottom 78.15 14.525 0 +z 8.7312 through clearance",
            "bottom 33.7 90.725 0 +z 8.7312 through clearance", "bottom 78.15 90.725 0 +z 8.7312 through clearance",
        ],
        Of(16, 560, $"castors: {{castor: swivel-75}}{joint}").Bores("front-left-castor"));
}
