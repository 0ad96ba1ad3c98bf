using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Consultants keep the list of people; nobody registers themselves.</summary>
internal static class PeopleEndpoints
{
    public sealed record NewPerson(
        string? Email, string? DisplayName, string? Role, string? PhoneNumber, string? Password);

    public sealed record ChangedPerson(
        string? DisplayName, string? Role, string? PhoneNumber, string? Email = null);

    public sealed record NewPassword(string? Password);

    /// <param name="Id">The person.</param>
    /// <param name="Email">The mail address, which is also the sign-in name.</param>
    /// <param name="DisplayName">The name.</param>
    /// <param name="Role">What they may see and do.</param>
    /// <param name="PhoneNumber">The telephone, or null.</param>
    /// <param name="Bounce">Why no mail is sent to the address; null when nothing is known against it.</param>
    public sealed record PersonView(
        Guid Id, string Email, string DisplayName, Role Role, string? PhoneNumber, BounceView? Bounce);

    public static void MapPeople(this IEndpointRouteBuilder app)
    {
        var people = app.MapGroup("/api/people").WithTags("People").RequireAuthorization(Access.Plan);
        people.MapGet("", ListAsync);
        people.MapPost("", CreateAsync);
        people.MapPut("/{id:guid}", UpdateAsync);
        people.MapPut("/{id:guid}/password", SetPasswordAsync);
    }

    private static async Task<List<PersonView>> ListAsync(WorkWindowsDb db, CancellationToken cancellation)
    {
        var bounces = await BouncingAddresses.ReadAsync(db, cancellation);
        var people = await db.People.AsNoTracking().OrderBy(person => person.DisplayName).ToListAsync(cancellation);
        return people.ConvertAll(person => View(person, bounces));
    }

    private static async Task<Results<Created<PersonView>, ValidationProblem>> CreateAsync(
        NewPerson request, UserManager<Person> people, WorkWindowsDb db, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        var email = faults.Required("email", request.Email, FieldText.IsMail, FieldText.Mail);
        var person = new Person
        {
            UserName = email,
            Email = email,
            DisplayName = faults.Required("displayName", request.DisplayName, FieldText.IsName, FieldText.Name),
            Role = RoleWords.OfPerson(request.Role, faults),
            PhoneNumber = request.PhoneNumber,
        };
        await CheckPasswordAsync(person, request.Password, people, faults);
        if (faults.Any)
            return faults.ToProblem();
        var result = await people.CreateAsync(person, request.Password!);
        return result.Succeeded
            ? TypedResults.Created($"/api/people/{person.Id}", await ViewAsync(person, db, cancellation))
            : Refusal(result);
    }

    private static async Task<Results<Ok<PersonView>, NotFound, ValidationProblem, ProblemHttpResult>> UpdateAsync(
        Guid id, ChangedPerson request, Caller caller, UserManager<Person> people, WorkWindowsDb db,
        CancellationToken cancellation)
    {
        if (await people.FindByIdAsync($"{id}") is not { } person)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        var displayName = faults.Required("displayName", request.DisplayName, FieldText.IsName, FieldText.Name);
        var role = RoleWords.OfPerson(request.Role, faults);
        var email = request.Email is null
            ? person.Email
            : faults.Required("email", request.Email, FieldText.IsMail, FieldText.Mail);
        if (faults.Any)
            return faults.ToProblem();
        if (caller.PersonId == id && role != person.Role)
        {
            return TypedResults.Problem(
                "Another consultant must do this, so that the organization is never left without one.",
                statusCode: StatusCodes.Status409Conflict, title: "You cannot change your own role.");
        }

        (person.DisplayName, person.Role, person.PhoneNumber) = (displayName, role, request.PhoneNumber);
        (person.Email, person.UserName) = (email, email);
        // A new stamp makes old cookies, which name the old role, invalid.
        var result = await people.UpdateSecurityStampAsync(person);
        return result.Succeeded ? TypedResults.Ok(await ViewAsync(person, db, cancellation)) : Refusal(result);
    }

    private static async Task<Results<NoContent, NotFound, ValidationProblem>> SetPasswordAsync(
        Guid id, NewPassword request, WorkWindowsDb db, UserManager<Person> people, CancellationToken cancellation)
    {
        if (await people.FindByIdAsync($"{id}") is not { } person)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        await CheckPasswordAsync(person, request.Password, people, faults);
        if (faults.Any)
            return faults.ToProblem();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await people.RemovePasswordAsync(person);
        var result = await people.AddPasswordAsync(person, request.Password!);
        if (!result.Succeeded)
            return Refusal(result);
        await people.SetLockoutEndDateAsync(person, null);
        await transaction.CommitAsync(cancellation);
        return TypedResults.NoContent();
    }

    /// <summary>Says what is wrong with a password, beside all else, and never the password itself.</summary>
    private static async Task CheckPasswordAsync(
        Person person, string? password, UserManager<Person> people, FieldFaults faults)
    {
        if (string.IsNullOrEmpty(password))
        {
            faults.Add("password", null, $"at least {people.Options.Password.RequiredLength} characters");
            return;
        }
        foreach (var validator in people.PasswordValidators)
        {
            foreach (var error in (await validator.ValidateAsync(people, person, password)).Errors)
                faults.AddSentence("password", error.Description);
        }
    }

    private static async Task<PersonView> ViewAsync(Person person, WorkWindowsDb db, CancellationToken cancellation) =>
        View(person, await BouncingAddresses.ReadAsync(db, cancellation));

    private static PersonView View(Person person, BouncingAddresses bounces) => new(
        person.Id, person.Email!, person.DisplayName, person.Role, person.PhoneNumber, bounces.Of(person.Email!));

    private static ValidationProblem Refusal(IdentityResult result)
    {
        var faults = new FieldFaults();
        foreach (var error in result.Errors)
        {
            faults.AddSentence(
                error.Code.StartsWith("Password", StringComparison.Ordinal) ? "password" : "email", error.Description);
        }
        return faults.ToProblem();
    }
}
